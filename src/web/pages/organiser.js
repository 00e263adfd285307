"use strict";

let view = null;

function personWords(person) {
  const words = [person.connected > 0 ? "connected" : "not connected"];
  if (!person.contributed) words.push("no characters yet");
  if (!person.declared_start) words.push("start not declared");
  if (view.played > 0 && !person.declared_end) words.push("end not declared");
  return words.join(", ");
}

function draw() {
  say("heading", view.title);
  say("progress", `${view.played} of ${view.planned} trials`);
  say("commitment", view.commitment);
  const awaited = view.waiting_for > 0 && view.began ? `, ${view.waiting_for} of the listeners still to answer` : "";
  say("left", `about ${Math.ceil(view.seconds_left / 60)} min${awaited}`);
  say("spoiled", view.spoiled.map((s) => `${s.trial} (${s.reason}, by ${s.by}${s.late ? ", late" : ""})`).join("; ") || "none");
  pairs("people", view.people.map((person) => [person.name, personWords(person)]));
  show("ending", view.head === "");
  show("end", view.phase === "done");
  show("not-yet", view.phase !== "done");
  show("after", view.head !== "" && !view.unsealed);
  say("head", view.head);
  show("report", view.unsealed);
}

function qrPicture(link) {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  svg.setAttribute("viewBox", `0 0 ${link.size} ${link.size}`);
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", `QR code of the link of ${link.name}`);
  const dark = document.createElementNS("http://www.w3.org/2000/svg", "path");
  dark.setAttribute("d", link.path);
  svg.append(dark);
  return svg;
}

async function drawLinks() {
  const reply = await fetch("/organiser/links");
  if (!reply.ok) return;
  byId("links").replaceChildren(...(await reply.json()).map((link) => {
    const item = document.createElement("li"), name = document.createElement("b"), words = document.createElement("span");
    name.textContent = link.name;
    words.textContent = link.link;
    item.append(name, qrPicture(link), words);
    return item;
  }));
}

byId("show-links").addEventListener("click", async () => {
  const hidden = byId("links").hidden;
  if (hidden) await drawLinks();
  show("links", hidden);
  byId("show-links").setAttribute("aria-expanded", String(hidden));
  say("show-links", hidden ? "Hide the links" : "Show the links");
});
byId("end").addEventListener("click", () => send("end", {}));
byId("unseal").addEventListener("click", () => send("unseal", {}));
onSubmit("early", (form) => send("end-early", {who: form.get("who"), why: form.get("why"), had_seen: form.get("seen") === "yes"}));
onSubmit("handover", async (form, element) => {
  if (await send("handover", {to: form.get("to"), how: form.get("how")})) element.reset();
});
start((next) => { view = next; draw(); });
