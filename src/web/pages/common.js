// What every page shares: entering by the code in the address, the stream of views, and sending actions.
"use strict";

const role = location.pathname.slice(1);
const byId = (id) => document.getElementById(id);
const show = (id, on) => { byId(id).hidden = !on; };
const say = (id, words) => { if (byId(id).textContent !== words) byId(id).textContent = words; };

async function send(action, fields) {
  try {
    const reply = await fetch(`/${role}/${action}`, {
      method: "POST",
      headers: {"Content-Type": "application/json", "X-Blindswap": "1"},
      body: JSON.stringify(fields || {}),
    });
    const body = await reply.json();
    say("problem", reply.ok ? "" : body.error);
    return reply.ok;
  } catch (lost) {
    say("problem", "Not sent: no connection. It will be sent again when you try again.");
    return false;
  }
}

function listen(render) {
  const stream = new EventSource(`/${role}/events`);
  stream.onmessage = (message) => { say("connection", ""); render(JSON.parse(message.data)); };
  stream.onerror = () => {
    say("connection", "No connection. This page tries again by itself.");
    if (stream.readyState === EventSource.CLOSED) setTimeout(() => listen(render), 2000);
  };
}

async function start(render) {
  const code = location.hash.slice(1);
  if (code) {
    history.replaceState(null, "", location.pathname);
    if (!await send("enter", {code})) return;
  }
  listen(render);
}

function onSubmit(id, action) {
  byId(id).addEventListener("submit", async (event) => {
    event.preventDefault();
    const button = event.submitter;
    if (button) button.disabled = true;
    await action(new FormData(event.target), event.target);
    if (button) button.disabled = false;
  });
}
