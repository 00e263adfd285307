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
  say("left", `about ${Math.ceil(view.seconds_left / 60)} min`);
  say("spoiled", view.spoiled.map((s) => `${s.trial} (${s.reason}, by ${s.by}${s.late ? ", late" : ""})`).join("; ") || "none");
  byId("people").replaceChildren(...view.people.flatMap((person) => {
    const dt = document.createElement("dt"), dd = document.createElement("dd");
    dt.textContent = person.name;
    dd.textContent = personWords(person);
    return [dt, dd];
  }));
  show("ending", view.head === "");
  show("after", view.head !== "" && !view.unsealed);
  say("head", view.head);
  show("report", view.unsealed);
}

byId("end").addEventListener("click", () => send("end", {}));
byId("unseal").addEventListener("click", () => send("unseal", {}));
onSubmit("early", (form) => send("end-early", {who: form.get("who"), why: form.get("why"), had_seen: form.get("seen") === "yes"}));
onSubmit("handover", async (form, element) => {
  if (await send("handover", {to: form.get("to"), how: form.get("how")})) element.reset();
});
start((next) => { view = next; draw(); });
