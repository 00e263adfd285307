"use strict";

let view = null;
const sureWords = ["guess", "fairly sure", "certain"];

function buttons(holder, words, pressed, click) {
  if (holder.children.length !== words.length || [...holder.children].some((b, i) => b.textContent !== words[i])) {
    holder.replaceChildren(...words.map((word) => {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = word;
      button.addEventListener("click", () => click(word));
      return button;
    }));
  }
  for (const button of holder.children) button.setAttribute("aria-pressed", String(button.textContent === pressed));
}

async function answer(word, sureness) {
  if (await send("answer", {trial: view.trial, answer: word, sureness: sureness || ""})) {
    view.own_answer = word;
    if (sureness) view.own_sureness = sureness;
    draw();
  }
}

function drawPresentations() {
  const items = view.labels.map((label, i) => {
    const item = document.createElement("li");
    const now = view.playing !== "" && i === view.heard - 1;
    item.className = now ? "now" : i < view.heard ? "past" : "";
    const name = document.createElement("b");
    name.textContent = label;
    item.append(name, now ? "playing" : i < view.heard ? "played" : "to come");
    return item;
  });
  byId("presentations").replaceChildren(...items);
}

function headingOf() {
  const name = view.trial < 0 ? `Practice ${-view.trial} (not counted)` : `Trial ${view.trial}`;
  if (view.phase === "before") return (view.contributed || view.began) && view.declared_start ? "Waiting for the sitting to begin" : "Before the sitting";
  if (view.phase === "over") return "The sitting has ended";
  if (view.phase === "rest") return "A break";
  if (view.phase === "answer") return `${name}: your answer`;
  if (view.phase === "wait") return view.finished ? "That was the last trial" : `${name}: waiting for the next`;
  return view.playing ? `${name}: ${view.playing} is playing` : `${name}: the helper is at work`;
}

function draw() {
  say("name", view.name);
  say("resting", view.resting && view.phase !== "over" ? "A break was asked for. The helper goes on when everybody is ready." : "");
  say("progress", `${view.settled} of ${view.planned} answered`);
  say("heading", headingOf());
  show("contribute", !view.began && !view.contributed);
  const wanted = view.finished ? !view.declared_end : !view.declared_start;
  show("declare", wanted && view.phase !== "over" && (view.contributed || view.began));
  say("declare-legend", `At the ${view.finished ? "end" : "start"}: no sight, hearing or talk between you and the helper?`);
  const running = view.trial !== 0 && view.phase !== "over";
  show("presentations", running);
  if (running) drawPresentations();
  show("answering", running && view.may_answer);
  say("question", view.question);
  buttons(byId("answers"), view.answers, view.own_answer, (word) => answer(word, ""));
  show("sure", view.own_answer !== "");
  buttons(byId("sureness"), sureWords, view.own_sureness, (word) => answer(view.own_answer, word));
  say("kept", view.own_answer ? `Kept: ${view.own_answer}. You can change it until the next trial begins.` : "");
  show("note", running);
  show("asking", running && view.trial > 0);
  show("cue", view.finished && !view.told_cues && view.phase !== "over");
}

onSubmit("contribute", (form) => send("contribute", {characters: form.get("characters")}));
onSubmit("note", async (form, element) => {
  const kept = await send("note", {words: `trial ${view.trial}: ${form.get("words")}`});
  say("noted", kept ? "The note is kept." : "");
  if (kept) element.reset();
});
onSubmit("spoil", async (form, element) => {
  if (await send("spoil", {trial: view.trial, reason: form.get("reason"), words: form.get("words")})) element.reset();
});
onSubmit("cue", (form) => send("cue", {words: form.get("words")}));
onDeclare(() => view.finished ? "end" : "start");
byId("rest").addEventListener("click", () => send("rest", {}));
start((next) => { view = next; draw(); });
