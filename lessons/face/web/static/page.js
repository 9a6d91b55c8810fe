// Small helps: all forms work without them.
"use strict";
window.helpPage = (root) => {
for (const keys of root.querySelectorAll("[data-keys]")) {
  keys.hidden = false;
  keys.addEventListener("click", (e) => {
    const key = e.target.dataset.key, field = document.getElementById("typed");
    if (!key || !field) return;
    field.value = key === "/" ? field.value + key : field.value.replace(/\s*[a-z]*$/, "") + key;
    field.focus();
  });
}
// Steps are tapped in their order; a second tap takes the last ones back.
for (const order of root.querySelectorAll("[data-order]")) {
  order.hidden = false;
  const field = document.getElementById("typed");
  order.addEventListener("click", (e) => {
    const step = e.target.dataset.step;
    if (!step) return;
    const given = field.value.split(/\s+/).filter(Boolean), at = given.indexOf(step);
    field.value = (at < 0 ? given.concat(step) : given.slice(0, at)).join(" ");
    for (const b of order.querySelectorAll("button")) b.setAttribute("aria-pressed", field.value.split(" ").includes(b.dataset.step));
  });
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
