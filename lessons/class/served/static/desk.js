// The instructor's page and the wall: fetched anew when the room has changed.
"use strict";
(() => {
  const live = document.getElementById("live"), part = document.body.dataset.part;
  let busy = false, again = false;
  async function refresh() {
    if (busy) { again = true; return; }
    busy = true;
    try {
      const answer = await fetch(part);
      if (answer.ok) {
        const focus = document.activeElement?.dataset?.focus;
        live.innerHTML = await answer.text();
        if (focus) live.querySelector(`[data-focus="${CSS.escape(focus)}"]`)?.focus();
      }
    } catch { /* the stream comes back by itself */ }
    busy = false;
    if (again) { again = false; refresh(); }
  }
  live.addEventListener("submit", async (e) => {
    e.preventDefault();
    try { await fetch(e.target.action, { method: "POST", body: new URLSearchParams(new FormData(e.target, e.submitter)), headers: { Accept: "application/json" } }); } catch { return; }
    refresh();
  });
  const stream = new EventSource(document.body.dataset.events);
  stream.onmessage = (e) => { if (e.data !== live.firstElementChild?.dataset.version) refresh(); };
})();
