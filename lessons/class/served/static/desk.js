// The instructor's pages and the wall: what has changed in the room is put into the page that is
// there, so that focus, what was typed, and what is folded open stay.
"use strict";
(() => {
  const shared = document.currentScript.dataset.stream;
  const page = document.body, live = document.getElementById("live"), said = document.getElementById("said");
  if (!live || !page.dataset.part) return;
  const isWall = page.classList.contains("wall");

  // become makes one element like another, and leaves alone what a person has done to it.
  const keyOf = (e) => (e.nodeType === 1 ? e.dataset.key || e.id || "" : "");
  function become(now, then) {
    if ("said" in now.dataset) return; // what was said beside a button stays until that is pressed again
    for (const a of [...now.attributes]) if (!then.hasAttribute(a.name) && !(a.name === "open" && now.tagName === "DETAILS")) now.removeAttribute(a.name);
    for (const a of then.attributes) if (now.getAttribute(a.name) !== a.value && !(a.name === "open" && now.tagName === "DETAILS")) now.setAttribute(a.name, a.value);
    becomeChildren(now, then);
  }
  function becomeChildren(now, then) {
    const keyed = new Map([...now.children].filter(keyOf).map((e) => [e.tagName + keyOf(e), e]));
    let at = now.firstChild;
    for (const want of [...then.childNodes]) {
      const key = keyOf(want);
      let have = key ? keyed.get(want.tagName + key) : at;
      if (!key) while (have && keyOf(have)) have = have.nextSibling;
      if (!have || have.nodeName !== want.nodeName) { now.insertBefore(want, at); continue; }
      if (have !== at) now.insertBefore(have, at); else at = at.nextSibling;
      if (have.nodeType === 1) become(have, want); else if (have.data !== want.data) have.data = want.data;
    }
    while (at) { const next = at.nextSibling; at.remove(); at = next; }
  }
  let latest = null;
  function show(html) {
    latest = html;
    const then = document.createElement("div"), focus = document.activeElement, under = live.querySelector(".standing tr:hover, .standing tr:focus-within"), top = under?.getBoundingClientRect().top;
    then.innerHTML = html;
    hold(then);
    becomeChildren(live, then);
    if (focus?.isConnected && focus !== document.activeElement) focus.focus({ preventScroll: true });
    if (under?.isConnected) scrollBy(0, under.getBoundingClientRect().top - top); // what has come above it
    fit();
  }

  // Rows keep their places while someone is at the table: a click would be on another's row.
  // They are put in order once it is left, or when that is asked for.
  const held = document.getElementById("held"), table = () => live.querySelector(".standing");
  const atTable = () => table()?.matches(":hover, :focus-within");
  function hold(then) {
    const next = then.querySelector(".standing");
    if (!held || !next) return;
    const order = (t) => [...t.rows].map(keyOf).join();
    const before = order(next);
    if (atTable()) {
      for (const now of table().tBodies) {
        const body = [...next.tBodies].find((b) => keyOf(b) === keyOf(now));
        let last = null;
        for (const row of body ? now.rows : []) {
          const same = [...next.rows].find((r) => keyOf(r) && keyOf(r) === keyOf(row));
          if (!same) continue;
          if (last) last.after(same); else body.prepend(same);
          last = same;
        }
      }
    }
    held.hidden = order(next) === before;
  }
  function putInOrder() { if (held && !held.hidden) show(latest); }
  live.addEventListener("mouseout", (e) => { if (!live.querySelector(".standing")?.contains(e.relatedTarget) && !atTable()) putInOrder(); });
  live.addEventListener("focusout", () => setTimeout(() => { if (!atTable()) putInOrder(); }));
  document.getElementById("sort")?.addEventListener("click", putInOrder);

  // A program that does not answer is asked again until it does; the page says so meanwhile.
  const lost = document.getElementById("lost");
  let asking = 0;
  function reached(yes) {
    if (lost.textContent !== (yes ? "" : lost.dataset.says)) lost.textContent = yes ? "" : lost.dataset.says;
    clearTimeout(asking);
    if (!yes) asking = setTimeout(refresh, 3000);
  }

  // What has changed is fetched, once at a time.
  let tag = "", busy = false, again = false, version = page.dataset.version;
  async function refresh() {
    if (busy) { again = true; return; }
    busy = true;
    do {
      again = false;
      try {
        const answer = await fetch(page.dataset.part, { cache: "no-store", headers: tag ? { "If-None-Match": tag } : {} });
        version = answer.headers.get("X-Version") || version;
        if (answer.status === 200) { tag = answer.headers.get("ETag") || ""; show(await answer.text()); }
        reached(true);
      } catch { reached(false); }
    } while (again);
    busy = false;
  }

  // What is done is sent; what is wrong with it is told beside its
  // button, or above.
  async function send(url, body, beside) {
    try {
      const answer = await fetch(url, { method: "POST", body, headers: { Accept: "application/json" } });
      const says = answer.ok ? "" : said ? said.dataset.not.split("…").join(await answer.text()) : "";
      if (said) said.textContent = beside ? "" : says;
      if (beside) beside.textContent = says;
      await refresh();
      return answer.ok;
    } catch { reached(false); return false; }
  }
  page.addEventListener("submit", async (e) => {
    if (e.target.method !== "post" || "plain" in e.target.dataset) return;
    e.preventDefault();
    if (await send(e.target.getAttribute("action"), new URLSearchParams(new FormData(e.target, e.submitter)), e.target.querySelector("[data-said]")) && !e.target.querySelector("[value]:not([type=hidden]):not(button)")) e.target.reset();
  });

  // The wall goes on and back by the keys of a clicker. What is below the edge is shown first.
  const on = ["PageDown", "ArrowRight", "ArrowDown", " ", "Enter", "n"], back = ["PageUp", "ArrowLeft", "ArrowUp", "Backspace", "p"];
  let stepping = false;
  async function step(does) {
    const edge = document.documentElement, down = does === "next";
    const rest = down ? edge.scrollHeight - innerHeight - scrollY : scrollY;
    if (rest > 4) { scrollBy(0, (down ? 1 : -1) * Math.min(rest, innerHeight * 0.7)); return; }
    if (stepping) return;
    stepping = true;
    await send(page.dataset.steps, new URLSearchParams({ do: does, from: live.querySelector("footer")?.dataset.at || "" }));
    stepping = false;
  }
  if (page.dataset.steps) addEventListener("keydown", (e) => {
    const does = on.includes(e.key) ? "next" : back.includes(e.key) ? "back" : "";
    if (!does || e.ctrlKey || e.altKey || e.metaKey) return;
    e.preventDefault();
    if (!e.repeat) step(does);
  });

  // The letters of the wall are as large as fit, and never smaller than can be read from afar.
  const least = 28, most = 46;
  function fit() {
    if (!isWall) return;
    const edge = document.documentElement, top = Math.max(most, innerWidth / 26);
    const fits = (tight, stacked, smallest) => {
      live.dataset.tight = tight;
      for (const q of live.querySelectorAll(".question")) { // a wide drawing is larger below its words than beside them
        const v = q.querySelector("svg")?.viewBox.baseVal;
        q.classList.toggle("stacked", stacked && !!v && v.width > 1.4 * v.height);
      }
      for (let size = top; size >= smallest; size -= 2) {
        edge.style.fontSize = size + "px";
        if (edge.scrollHeight <= innerHeight && edge.scrollWidth <= innerWidth) return true;
      }
      return false;
    };
    // What the room can do without goes first: size, then the drawing, then what may be chosen.
    if (fits(0, true, 32) || fits(0, false, 30) || fits(1, false, least) || fits(2, false, least) || fits(3, false, least) || fits(3, false, 24)) return;
    const lines = live.querySelectorAll(".worked .working dt");
    if (lines.length) scrollTo(0, edge.scrollHeight);
  }
  addEventListener("resize", fit);
  fit();

  // One stream: of all pages where the browser can share one, else of this page.
  const heard = (data) => { if (data === "" || data !== version) refresh(); };
  const url = page.dataset.events;
  if (window.SharedWorker) {
    const worker = new SharedWorker(shared), tell = (what) => worker.port.postMessage(what);
    worker.port.onmessage = (m) => heard(m.data);
    const seen = () => tell({ url, seen: !document.hidden });
    document.addEventListener("visibilitychange", seen);
    addEventListener("pageshow", seen);
    addEventListener("pagehide", () => tell({ gone: true }));
    seen();
  } else {
    let stream = null;
    const listen = () => {
      if (document.hidden) { stream?.close(); stream = null; return; }
      if (stream) return;
      stream = new EventSource(url);
      stream.onmessage = (e) => heard(e.data);
      stream.onerror = () => heard("");
    };
    document.addEventListener("visibilitychange", listen);
    listen();
  }
})();
