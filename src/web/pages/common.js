// What every page shares: entering by the code in the address, the stream of views, and sending actions.
"use strict";

const role = location.pathname.slice(1);
const byId = (id) => document.getElementById(id);
const show = (id, on) => { byId(id).hidden = !on; };
const say = (id, words) => { if (byId(id).textContent !== words) byId(id).textContent = words; };

// What could not be sent for want of a connection: the newest of each action, sent again when there is one.
const unsent = new Map();

// Whose page this is: another link opened in the same browser takes the pass of the first.
let owner = "";

async function send(action, fields) {
  let reply;
  try {
    reply = await fetch(`/${role}/${action}`, {
      method: "POST",
      headers: {"Content-Type": "application/json", "X-Blindswap": "1"},
      body: JSON.stringify({...fields, as: owner}),
    });
  } catch (lost) {
    if (action === "answer") unsent.set(action, fields);
    say("problem", action === "answer" ? "Not sent yet: no connection. It is sent by itself when there is one." :
      "Not sent: no connection. Try again when there is one.");
    return false;
  }
  unsent.delete(action);
  say("problem", reply.ok ? "" : (await reply.json()).error);
  return reply.ok;
}

function sendAgain() {
  for (const [action, fields] of [...unsent]) send(action, fields);
}

let heard = 0;
let stream = null;
let drawnPlace = "";  // a complaint stands until the sitting has moved on

function listen(render) {
  if (stream) stream.close();
  heard = Date.now();
  const own = stream = new EventSource(`/${role}/events`);
  own.addEventListener("pulse", () => { heard = Date.now(); });
  own.onmessage = (message) => {
    heard = Date.now();
    say("connection", "");
    const view = JSON.parse(message.data), place = `${view.phase} ${view.trial}`;
    if (place !== drawnPlace && unsent.size === 0) say("problem", "");
    drawnPlace = place;
    owner = view.name || "";
    keepFocus(() => render(view));
    sendAgain();
  };
  own.onerror = async () => {
    say("connection", "No connection. This page tries again by itself.");
    if (own.readyState !== EventSource.CLOSED || own !== stream) return;
    const refused = await fetch(`/${role}/view`).then((reply) => reply.status === 403, () => false);
    if (refused) say("connection", "Open the link that you were given: this device has no pass for this sitting.");
    else setTimeout(() => listen(render), 2000);
  };
}

// A device that slept may hold a stream that has long ended: the server gives a pulse every 15 seconds.
function watch(render) {
  setInterval(() => {
    if (stream && stream.readyState !== EventSource.CLOSED && Date.now() - heard > 40000) listen(render);
    sendAgain();
  }, 5000);
}

// What held the focus may be gone after drawing: the heading tells what there is instead. A button marked so gets the
// focus back when it comes again.
let gone = null;
function keepFocus(draw) {
  const before = document.activeElement, isGone = (element) => !element.isConnected || element.closest("[hidden]");
  draw();
  if (before !== document.body && isGone(before)) {
    gone = before.dataset.focus === "returns" ? before : null;
    byId("heading").focus();
  } else if (gone && !isGone(gone)) {
    if (document.activeElement === byId("heading")) gone.focus();
    gone = null;
  }
}

async function start(render) {
  const code = location.hash.slice(1);
  if (code) {
    history.replaceState(null, "", location.pathname);
    while (!await send("enter", {code})) {
      if (byId("problem").textContent.startsWith("this link")) return say("heading", "This page stays closed");
      await new Promise((again) => setTimeout(again, 2000));
    }
  }
  listen(render);
  watch(render);
}

// Another link to the same page, opened in the same tab, only changes the part of the address behind the #.
addEventListener("hashchange", () => location.reload());

function onSubmit(id, action) {
  byId(id).addEventListener("submit", async (event) => {
    event.preventDefault();
    if (event.target.dataset.sending) return;
    event.target.dataset.sending = "yes";
    try {
      await action(new FormData(event.target), event.target, event.submitter);
    } finally {
      delete event.target.dataset.sending;
    }
  });
}

// Whether separation was kept: one of two buttons, and words.
function onDeclare(moment) {
  onSubmit("declare", async (form, element, button) => {
    const words = byId("declare-words").value;
    if (await send("declare", {moment: moment(), kept: button.value === "yes", words})) element.reset();
  });
}

// A definition list from pairs of term and words.
function pairs(id, list) {
  byId(id).replaceChildren(...list.flatMap(([term, words]) =>
    [Object.assign(document.createElement("dt"), {textContent: term}), Object.assign(document.createElement("dd"), {textContent: words})]));
}
