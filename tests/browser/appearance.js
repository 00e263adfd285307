// Looks at the page as it stands and says what is wrong with it, in words. Source of the limits: WCAG 2.2, success
// criteria 1.4.3 (contrast of text), 1.4.11 (of controls), 1.4.10 (reflow), 1.3.1 and 2.4.6 (headings), 2.4.7 (focus);
// 48 CSS pixels for targets is this project's own rule, above 2.5.8.
function contrastOf(a, b) {
  const luminance = (colour) => {
    const [r, g, b] = colour.map((c) => c / 255).map((c) => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

const numbersOf = (colour) => (colour.match(/[\d.]+/g) || []).map(Number);
const seen = (element) => element.checkVisibility() && element.getBoundingClientRect().width > 0;
const shown = (css) => [...document.querySelectorAll(css)].filter(seen);
const called = (element) => `${element.tagName.toLowerCase()}${element.id ? "#" + element.id : ""} "${(element.textContent || "").trim().slice(0, 40)}"`;

function groundOf(element) {
  for (let at = element; at; at = at.parentElement) {
    const colour = numbersOf(getComputedStyle(at).backgroundColor);
    if (colour.length === 3 || colour[3] === 1) return colour.slice(0, 3);
  }
  return matchMedia("(prefers-color-scheme: dark)").matches ? [0, 0, 0] : [255, 255, 255];
}

function complaints() {
  const all = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const element = walker.currentNode.parentElement;
    if (!walker.currentNode.data.trim() || !seen(element) || element.closest("[disabled], option, script")) continue;
    const style = getComputedStyle(element), size = parseFloat(style.fontSize);
    const least = size >= 24 || (size >= 18.66 && style.fontWeight >= 700) ? 3 : 4.5;
    const ratio = contrastOf(numbersOf(style.color).slice(0, 3), groundOf(element));
    if (ratio < least) all.push(`contrast ${ratio.toFixed(2)} of ${called(element)}`);
    if (size < 16) all.push(`letters of ${size} px in ${called(element)}`);
  }
  for (const control of shown("button, summary, input, select, textarea, a")) {
    const box = control.getBoundingClientRect();
    if (box.height < 48 || box.width < 48) all.push(`target of ${box.width} by ${box.height} px: ${called(control)}`);
    if (control.disabled || ["A", "SUMMARY"].includes(control.tagName)) continue;
    const ratio = contrastOf(numbersOf(getComputedStyle(control).borderTopColor).slice(0, 3), groundOf(control.parentElement));
    if (ratio < 3) all.push(`contrast ${ratio.toFixed(2)} of the border of ${called(control)}`);
  }
  for (const pressed of shown("[aria-pressed=true]"))
    if (getComputedStyle(pressed, "::before").content === "none") all.push(`pressed by colour alone: ${called(pressed)}`);
  const wide = document.documentElement.scrollWidth - innerWidth;
  if (wide > 0) all.push(`the page is ${wide} px wider than the screen`);
  const levels = shown("h1, h2, h3, h4").map((heading) => Number(heading.tagName[1]));
  if (levels.filter((level) => level === 1).length !== 1) all.push("not one h1");
  levels.forEach((level, i) => { if (level > (i ? levels[i - 1] : 0) + 1) all.push(`heading ${i} skips a level`); });
  if (!document.documentElement.lang || !document.title || shown("main").length !== 1) all.push("no language, title or main");
  const ids = [...document.querySelectorAll("[id]")].map((element) => element.id);
  if (new Set(ids).size !== ids.length) all.push("two elements share an id");
  return all;
}

// The controls in the order in which the page is read, and the one that has the focus.
const inOrder = () => shown("button:not([disabled]), summary, input, select, textarea, a[href]").map(called);
function focused() {
  const element = document.activeElement, style = getComputedStyle(element);
  const visible = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
  return called(element) + (visible ? "" : " without a visible focus");
}
