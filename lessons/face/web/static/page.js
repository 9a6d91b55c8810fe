// Small helps: all forms work without them.
"use strict";
window.helpPage = (root) => {
// Keys beside those of a phone: signs go in where the caret stands, a unit at the end.
let field = root.querySelector(".typed");
for (const f of root.querySelectorAll(".typed")) f.addEventListener("focus", () => { field = f; });
for (const keys of root.querySelectorAll("[data-keys]")) {
  keys.hidden = false;
  keys.addEventListener("click", (e) => {
    const { key, unit } = e.target.dataset;
    if (!key && !unit || !field) return;
    if (key) field.setRangeText(key, field.selectionStart, field.selectionEnd, "end");
    else field.value = `${field.value.replace(/\s*[a-z"]*\s*$/i, "")} ${unit}`.trimStart();
    field.focus();
  });
}
// Steps are put in order by arrows or dragged by their grip; the field has the order as numbers.
for (const order of root.querySelectorAll("[data-order]")) {
  const list = order.querySelector("ol"), heard = order.querySelector("[data-place]"), typed = document.getElementById("typed");
  const steps = () => [...list.children];
  const tell = (li) => {
    typed.value = steps().map((l) => l.dataset.step).join(" ");
    if (li) typed.dispatchEvent(new Event("input", { bubbles: true }));
    if (li) heard.textContent = heard.dataset.place.replace("${step}", li.children[1].textContent).replace("${n}", steps().indexOf(li) + 1).replace("${of}", steps().length);
  };
  const before = typed.value.split(/\D+/).filter(Boolean); // an order that was given before
  if (before.length === steps().length) for (const n of before) { const li = steps().find((l) => l.dataset.step === n); if (li) list.append(li); }
  for (const e of order.querySelectorAll("[data-scripted]")) e.hidden = false;
  root.querySelector("[data-typed]").hidden = true;
  list.addEventListener("click", (e) => {
    const way = +e.target.dataset.way, li = e.target.closest("li");
    if (!way) return;
    if (way < 0) li.previousElementSibling?.before(li);
    else li.nextElementSibling?.after(li);
    e.target.focus();
    tell(li);
  });
  list.addEventListener("pointerdown", (e) => {
    const grip = e.target.closest(".grip"), li = grip?.closest("li");
    if (!grip) return;
    e.preventDefault();
    li.classList.add("moving");
    const follow = (to) => {
      const over = steps().find((other) => other !== li && to.clientY > other.getBoundingClientRect().top && to.clientY < other.getBoundingClientRect().bottom);
      if (!over) return;
      const box = over.getBoundingClientRect();
      if (to.clientY < box.top + box.height / 2) over.before(li);
      else over.after(li);
    };
    const drop = () => {
      li.classList.remove("moving");
      for (const [what, done] of [["pointermove", follow], ["pointerup", drop], ["pointercancel", drop]]) removeEventListener(what, done);
      tell(li);
    };
    addEventListener("pointermove", follow);
    addEventListener("pointerup", drop);
    addEventListener("pointercancel", drop);
  });
  tell();
}
// A second press of a button sends nothing more.
for (const form of root.querySelectorAll("form")) {
  form.addEventListener("submit", (e) => setTimeout(() => {
    if (!e.defaultPrevented) for (const b of form.querySelectorAll("button")) b.disabled = true;
  }, 0));
}
};
window.helpPage(document);
// Coming back by the back button shows what is asked now, not what was.
addEventListener("pageshow", (e) => { if (e.persisted) location.reload(); });
