"use strict";

let view = null, arrived = 0, rehearsal = 0, skipsPractice = false, drawn = null;

const headings = {
  before: "Before the sitting", play: "Playing", connect: "Swap", ready: "Ready: wait for the clock", wait: "Waiting for answers",
  rest: "A break is due", done: "Every trial has been played", over: "The sitting has ended",
};

function secondsLeft() {
  return Math.max(0, Math.ceil((view.milliseconds_left - (performance.now() - arrived)) / 1000));
}

function drawClock() {
  if (!view) return;
  const left = secondsLeft();
  const words = {
    play: `stop the excerpt in ${left} s`, ready: left > 0 ? `start the excerpt in ${left} s` : "start the excerpt when told",
    connect: left > 0 ? `${left} s left for the swap` : "the swap's time is over",
  }[view.phase];
  show("clock", Boolean(words));
  say("clock", words || "");
}

function practises() { return view.next_practice.tag > 0 && !skipsPractice; }
function stepShown() { return practises() ? view.next_practice : view.next; }

function draw() {
  const step = stepShown();
  say("progress", `${view.played} of ${view.planned} trials`);
  const playing = view.phase === "play" ? `: start the excerpt now, ${view.now.label} in ${nameOf(view.now)}` : "";
  say("heading", headings[view.phase] + playing);
  const working = view.began && view.phase !== "over" && view.phase !== "play" && step.tag;
  show("step", Boolean(working));
  say("tag", String(step.tag));
  say("what", `${step.label} of ${nameOf(step)}`);
  say("volume", step.attenuation_db === "0" ? "the sitting's setting" : `${step.attenuation_db} dB below the sitting's setting`);
  say("excerpt", step.excerpt || "as arranged");
  byId("ready").setAttribute("aria-disabled", String(view.phase === "ready"));
  say("ready", view.phase === "ready" ? "Connected: it begins by itself" : "Connected and checked");
  show("skip", practises());
  say("resting", view.resting.length > 0 && view.phase !== "over" ?
    `A break, asked for by ${view.resting.join(", ")}. Go on when everybody is ready.` : "");
  say("trouble-now", view.trouble);
  drawWithdrawn();
  const over = view.now.trial > 0 && view.next.trial !== view.now.trial;
  show("waiting", over && view.waiting_for > 0 && view.phase !== "play" && view.phase !== "over");
  say("waiting-words", `${view.waiting_for} of the listeners have not answered yet.`);
  show("before", view.phase === "before" && !view.began);
  byId("missing").replaceChildren(...missing().map((words) => Object.assign(document.createElement("li"), {textContent: words})));
  const self = view.people.find((person) => person.name === "helper");
  show("declare", (!self.declared_start && view.phase !== "over") || (view.phase === "done" && !self.declared_end));
  say("declare-legend", `At the ${moment()}: no sight, hearing or talk between you and the listeners?`);
  say("rehearsed", view.longest_rehearsed_swap_seconds ?
    `Longest so far ${view.longest_rehearsed_swap_seconds} s; every swap gets ${view.swap_seconds} s.` :
    `Not rehearsed yet; every swap gets ${view.swap_seconds} s.`);
  say("begin", withoutCharacters().length === 0 ? "Close the characters and draw the order" :
    `Draw the order without characters of ${withoutCharacters().join(", ")}`);
  show("tagging", view.began && view.phase === "before");
  show("tagged", !view.tagged_by);
  say("tagged-by", view.tagged_by ? `Sleeved and tagged by ${view.tagged_by}.` : "");
  if (view.phase !== "before") byId("list").replaceChildren();
  show("trouble", view.now.trial > 0 && view.phase !== "over");
  show("facts-and-levels", view.phase !== "over");
  drawFold();
  drawFacts();
  drawLevels();
  drawClock();
}

// A trial withdrawn by somebody else, or a planned stop, changes the tag under the helper's hands.
function drawWithdrawn() {
  const last = view.spoiled.filter((trial) => !trial.late).at(-1);
  const spoiledNow = drawn && view.spoiled.length > drawn.spoiled.length && last;
  const sameNow = drawn && drawn.now.trial === view.now.trial && drawn.now.presentation === view.now.presentation;
  if (spoiledNow)
    say("look-again", `Trial ${last.trial} was withdrawn by ${last.by} (${last.reason}). Look at the tag again: it is another trial's.`);
  else if (sameNow && drawn.next.trial > 0 && view.next.trial > 0 && drawn.next.trial !== view.next.trial)
    say("look-again", `Trial ${view.next.trial} comes next now. Look at the tag again: it is another trial's.`);
  if (view.phase === "play" || view.phase === "done") say("look-again", "");
  drawn = view;
}

function moment() { return view.phase === "done" ? "end" : "start"; }

// Opened where they are wanted, closed while cables are swapped; in between as the helper leaves them.
function drawFold() {
  const quiet = ["before", "done"].includes(view.phase);
  if (byId("facts-and-levels").dataset.quiet === String(quiet)) return;
  byId("facts-and-levels").dataset.quiet = String(quiet);
  byId("facts-and-levels").open = quiet;
}

function nameOf(step) { return step.trial < 0 ? `practice ${-step.trial}` : `trial ${step.trial}`; }

function withoutCharacters() {
  return view.people.filter((person) => !person.contributed).map((person) => person.name);
}

function missing() {
  const words = [];
  for (const person of view.people) {
    if (!person.contributed) words.push(`${person.name} has added no characters yet`);
    if (!person.declared_start) words.push(`${person.name} has not declared separation yet`);
  }
  return words;
}

function options(id, words) {
  const select = byId(id);
  if (select.children.length === words.length) return;
  select.replaceChildren(...words.map(([value, text]) => new Option(text, value)));
}

function drawFacts() {
  options("fact-name", view.facts.map((fact) => [fact.name, fact.title]));
  pairs("facts", view.facts.filter((fact) => fact.value).map((fact) => [fact.title, fact.value]));
}

function drawLevels() {
  show("levels-section", view.began);
  options("level-tag", view.tags.map((tag) => [tag, String(tag)]));
  say("levels", view.levels.map((l) => `${l.tag} ${l.channel} ${l.moment}: ${l.level} ${l.unit}`).join("; "));
}

onDeclare(moment);
byId("begin").addEventListener("click", () => send("begin", {}));
byId("stopwatch").addEventListener("click", async () => {
  if (!rehearsal) {
    rehearsal = performance.now();
    say("stopwatch", "Stop: the swap is done");
    return;
  }
  const seconds = (performance.now() - rehearsal) / 1000;
  rehearsal = 0;
  say("stopwatch", "Start a rehearsed swap");
  await send("rehearse", {seconds});
});
byId("ready").addEventListener("click", () => {
  if (view.phase !== "ready") send("ready", {trial: stepShown().trial, presentation: stepShown().presentation});
});
byId("skip").addEventListener("click", () => { skipsPractice = true; keepFocus(draw); });
byId("close").addEventListener("click", () => send("close", {}));
byId("rest").addEventListener("click", () => send("rest", {}));
byId("show-list").addEventListener("click", async () => {
  const reply = await fetch("/helper/tagging-list");
  if (reply.ok) pairs("list", (await reply.json()).map((line) => [String(line.tag), line.specimen]));
});
onSubmit("tagged", (form) => send("tagged", {who: form.get("who")}));
onSubmit("spoil", async (form, element) => {
  if (await send("spoil", {trial: view.now.trial, reason: form.get("reason"), words: form.get("words")})) element.reset();
});
onSubmit("note", async (form, element) => {
  if (await send("note", {words: form.get("words")})) element.reset();
});
onSubmit("fact", async (form, element) => {
  if (await send("fact", {name: form.get("name"), value: form.get("value"), why: form.get("why")})) element.reset();
});
onSubmit("level", async (form) => {
  const fields = Object.fromEntries(form);
  fields.tag = Number(fields.tag);
  if (await send("level", fields)) byId("level-value").value = byId("level-why").value = "";
});
setInterval(drawClock, 250);
start((next) => { view = next; arrived = performance.now(); draw(); });
