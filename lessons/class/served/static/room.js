// A phone in a room: answers stay here until the computer has them on disk, what was typed
// survives a reload, and the page goes on by itself. All forms work without this, too.
"use strict";
(() => {
const page = document.body, room = page.dataset.room, who = page.dataset.who;
if (!room) return;
const base = "/r/" + room, seat = document.getElementById("seat"), sent = document.getElementById("sent");

// What is kept on the phone, by names that begin with the room's; where the browser keeps
// nothing, as long as the page is open.
const memory = new Map();
const store = {
  get(name) {
    if (memory.has(name)) return memory.get(name);
    try { return JSON.parse(localStorage.getItem(name)); } catch { return null; }
  },
  set(name, value) {
    try { localStorage.setItem(name, JSON.stringify(value)); memory.delete(name); } catch { memory.set(name, value); }
  },
  drop(name) {
    memory.delete(name);
    try { localStorage.removeItem(name); } catch { /* it was never there */ }
  },
  names(start) {
    let kept = [];
    try { kept = Object.keys(localStorage); } catch { /* forbidden */ }
    return [...new Set([...kept, ...memory.keys()])].filter((n) => n.startsWith(start)).sort();
  },
};
const mine = "room." + room + ".", outName = mine + "out." + who + ".", draftName = mine + "draft.";
const month = 30 * 24 * 3600e3;
for (const n of store.names("room.")) if (!(Date.now() - (store.get(n)?.at ?? 0) < month)) store.drop(n);
const randomKey = () => Array.from(crypto.getRandomValues(new Uint32Array(4)), (n) => n.toString(36)).join("");
// What has become of an answer stands at the foot, in sight above a keyboard; that it is saved
// stands under the button that sent it, or at the end, and covers nothing. Once what came is there,
// that has been said.
const place = () => {
  const saved = sent?.dataset.state === "saved", button = saved && answering()?.querySelector("button.primary");
  if (button) button.after(sent);
  else if (saved) part().append(sent);
  else if (sent && sent.parentElement !== page) page.append(sent);
  if (saved && ["tells", "over"].includes(part().dataset.scene)) { delete sent.dataset.state; sent.textContent = ""; }
};
const tell = (state) => {
  if (!sent) return;
  sent.dataset.state = state;
  sent.textContent = state ? sent.dataset[state] : "";
  place();
  const button = seat.querySelector("#answer button.primary")?.getBoundingClientRect(), bar = sent.getBoundingClientRect();
  if (state && button && button.top < innerHeight && button.bottom > bar.top && !sent.closest("main")) scrollBy(0, button.bottom - bar.top + 8);
};
const offline = () => { if (!waiting().length && sent?.dataset.state !== "sure") tell("offline"); };

// A request; null unless the room's own computer has answered. In another network another
// computer may have its address: what that says is nothing to go by.
async function ask(url, options) {
  const cut = new AbortController(), limit = setTimeout(() => cut.abort(), 4000);
  try {
    const r = await fetch(url, { ...options, signal: cut.signal });
    if (r.headers.get("X-Room") !== room) return null;
    return { status: r.status, ok: r.ok, html: (r.headers.get("Content-Type") || "").includes("html"), after: Number(r.headers.get("Retry-After")) || 0, text: await r.text() };
  } catch { return null; } finally { clearTimeout(limit); }
}
const post = (url, fields) => ask(url, { method: "POST", body: new URLSearchParams(fields), headers: { Accept: "application/json" } });

// Answers go out one after the other, the oldest first, with growing waits, until the computer
// has them. Each has a key of its own, so that it counts once however often it is sent.
let busy = false, wait = 0, timer = 0;
const waiting = () => store.names(outName);
const hold = (seconds) => {
  wait = Math.min(Math.max(wait * 2, 500), 30000);
  clearTimeout(timer);
  timer = setTimeout(send, Math.max(wait * (0.5 + Math.random() / 2), seconds * 1000));
};
async function send() {
  if (busy) return;
  busy = true;
  for (let names; (names = waiting()).length;) {
    const out = store.get(names[0]);
    if (!out) { store.drop(names[0]); continue; } // another page of this phone has sent it
    const r = await post(out.url, out.fields);
    if (!r || r.status === 429 || r.status >= 500 || r.status === 404) { tell("waiting"); hold(r?.after ?? 0); break; }
    if (r.status === 403) { location.href = base; break; } // it goes out when the name is this phone's again
    wait = 0;
    store.drop(names[0]);
    await sentOff(out, r);
  }
  busy = false;
}

// What comes of an answer that the computer has taken, or has not.
async function sentOff(out, r) {
  const here = part()?.dataset.question === out.question;
  if (r.html || !r.ok) tell(r.ok ? "" : "refused");
  if (here && atBench() && (r.html || !r.ok)) { store.drop(draftName + out.question); await notMade(r); return; }
  if (!r.ok) return;
  if (r.html) { if (here) aid(r.text); return; } // it is none: a word that helps
  tell(waiting().length ? "waiting" : "saved");
  const draft = draftName + out.question, typed = store.get(draft);
  if (typed && JSON.stringify(typed.fields) !== JSON.stringify(out.typed)) return; // something else is being typed by now
  store.drop(draft);
  if (here && out.place >= 0 && part().querySelector(".places")) history.replaceState(null, "", base + "?at=" + out.place);
  if (here) await refresh(true);
}

// At the bench a move goes out before the next can be made: each is for the lathe as it was seen.
const atBench = () => part()?.dataset.scene === "bench";
const onItsWay = () => waiting().some((n) => store.get(n)?.question === part().dataset.question);
function oneByOne(form) {
  const still = atBench() && onItsWay();
  if (form?.matches("#answer") && atBench()) for (const f of form.elements) f.disabled = still;
}
// A move that was not made: why, at the lathe as it stands, with what was typed to be put right. A
// move that lacks its figure alone is gone on with at once.
async function notMade(r) {
  if (r.html) show(r.text, true); else await refresh(true);
  const typed = document.getElementById("typed"), why = document.getElementById("aid");
  if (typed?.value.endsWith(" ")) { typed.focus(); typed.setSelectionRange(typed.value.length, typed.value.length); return; }
  why.tabIndex = -1;
  why.focus({ preventScroll: true });
  why.scrollIntoView();
}

// The seat is fetched when it has changed, and again until that has worked.
const part = () => seat?.firstElementChild;
const answering = () => part()?.querySelector("form#answer, form[data-keeps]");
let asking = 0, again = 0, pause = 0, all = false; // all: what is shown now is to be replaced, form and all
async function refresh(force) {
  const turn = ++asking;
  all ||= force; // one that overtakes it brings what it was to bring
  clearTimeout(again);
  const r = await ask(base + "/seat" + location.search, { headers: { Accept: "text/html" } });
  if (turn !== asking) return true; // a later one has been asked for
  if (r?.status === 403) { location.href = base; return false; }
  if (!r?.ok) {
    pause = Math.min(Math.max(pause * 2, 500), 30000);
    again = setTimeout(() => refresh(force), Math.max(pause, (r?.after ?? 0) * 1000));
    offline();
    return false;
  }
  pause = 0;
  if (sent?.dataset.state === "offline") tell("");
  force = all;
  all = false;
  show(r.text, force);
  return true;
}
const read = (html) => { const t = document.createElement("template"); t.innerHTML = html; return t.content; };
function show(html, force) {
  const next = read(html), then = next.firstElementChild, now = part();
  if (!then) return;
  const ends = then.dataset.scene === "over" && now?.dataset.scene !== "over";
  if (ends && location.search) { history.replaceState(null, "", base); refresh(true); return; } // all of it, not one question
  const same = now?.dataset.question === then.dataset.question && now?.dataset.scene === then.dataset.scene;
  const stays = now?.dataset.question === then.dataset.question, told = stays && then.dataset.scene === "tells";
  page.dataset.seat = then.dataset.version;
  if (same && !force && answering()) { // nothing is taken away from who types
    for (const piece of [".call", ".places"]) { const a = now.querySelector(piece), b = then.querySelector(piece); if (a && b) a.replaceWith(b); }
    bind(now);
    return;
  }
  seat.replaceChildren(...next.childNodes);
  place();
  window.helpPage?.(seat);
  bind(seat);
  if (same) return;
  if (!waiting().length) tell(then.dataset.scene === "kept" || stays && sent.dataset.state === "saved" ? "saved" : "");
  const to = (told && document.getElementById("came")) || seat.querySelector("h1");
  if (to) { to.tabIndex = -1; to.focus({ preventScroll: true }); to.scrollIntoView(); }
  if (to?.id !== "came") window.scrollTo(0, 0);
}
function aid(html) {
  const then = read(html), now = part(), from = then.getElementById("aid"), to = document.getElementById("aid");
  if (!from || !to) return;
  to.replaceChildren(...from.childNodes);
  const words = [now, then].map((at) => at.querySelector("#answer .help")); // one of them may ask whether it is meant
  if (words[0] && words[1]) {
    const asks = words[1].querySelector("[formaction]");
    words[0].replaceWith(words[1]);
    if (asks) { asks.focus({ preventScroll: true }); asks.scrollIntoView({ block: "nearest" }); return; }
  }
  to.scrollIntoView({ block: to.offsetHeight > innerHeight / 2 ? "start" : "nearest" }); // what is long is read from its beginning
}

// What is typed is kept at once, and is there again after a reload.
const fieldsOf = (form) => [...form.querySelectorAll("input[name=answer], input[name=sure], input[name=text]")];
const ticks = (f) => f.type === "radio" || f.type === "checkbox";
const typedIn = (form) => fieldsOf(form).map((f) => (ticks(f) ? f.checked : f.value));
const questionOf = (form) => part().dataset.question || who + "." + (form.elements.set?.value ?? "");
function remember(form) {
  const name = draftName + questionOf(form), draft = store.get(name);
  if (draft) fieldsOf(form).forEach((f, i) => {
    if (ticks(f)) f.checked = draft.fields[i] ?? f.checked; else f.value = draft.fields[i] ?? f.value;
  });
  const keep = () => { if (form.isConnected) store.set(name, { at: Date.now(), fields: typedIn(form) }); };
  form.addEventListener("input", keep);
  form.addEventListener("click", () => setTimeout(keep, 0)); // units and steps are put in by buttons
}

// The value of a sum is put into the field; sent it is by the button under that.
seat?.addEventListener("click", (e) => {
  const use = e.target.closest("button[name=use]"), field = document.getElementById("typed");
  if (!use || !field) return;
  e.preventDefault();
  field.value = use.value;
  field.dispatchEvent(new Event("input", { bubbles: true }));
  document.getElementById("aid").replaceChildren();
  field.focus();
});

// Forms are sent by the script, so that no answer ends on a page of an error.
function bind(root) {
  for (const form of page.querySelectorAll("form[method=post]")) {
    if (form.dataset.bound || !seat) continue;
    form.dataset.bound = "yes";
    if (form.matches("#answer, [data-keeps]")) remember(form);
    oneByOne(form);
    form.addEventListener("submit", (e) => { e.preventDefault(); submitted(form, e.submitter); });
  }
  for (const a of root.querySelectorAll("a[data-goes]")) {
    if (a.dataset.bound) continue;
    a.dataset.bound = "yes";
    a.addEventListener("click", (e) => {
      if (e.ctrlKey || e.metaKey || e.shiftKey) return;
      e.preventDefault();
      history.pushState(null, "", a.getAttribute("href"));
      refresh(true);
    });
  }
}
async function submitted(form, button) {
  const url = button?.getAttribute("formaction") || form.getAttribute("action"), fields = [...new FormData(form, button)].map(([k, v]) => [k, String(v)]);
  if (url.endsWith("/leave")) { leave(url); return; }
  const answer = form.matches("#answer") && button?.name !== "word";
  if (!answer && !form.matches("[data-keeps]")) { // a word that helps, the instructor is called: now, or not at all
    const r = await post(url, fields);
    if (!r) tell("offline");
    else if (r.html && r.ok) aid(r.text);
    else if (url.endsWith("/keep")) location.reload();
    else refresh(true);
    return;
  }
  if (atBench() && onItsWay()) return;
  const sure = form.querySelector(".sure");
  if (sure && !sure.dataset.asked && !sure.querySelector(":checked")) {
    sure.dataset.asked = "yes";
    tell("sure");
    sure.scrollIntoView({ block: "center" });
    sure.querySelector("input").focus({ preventScroll: true });
    return;
  }
  const question = questionOf(form), typed = typedIn(form);
  for (const n of waiting()) if (store.get(n)?.question === question) store.drop(n); // the last one counts
  store.set(draftName + question, { at: Date.now(), fields: typed });
  store.set(outName + String(Date.now()).padStart(15, "0") + "." + randomKey(), { at: Date.now(), url, fields: [...fields, ["key", randomKey()]], question, typed, place: Number(part().dataset.place ?? -1) });
  tell("waiting");
  oneByOne(form);
  wait = 0;
  clearTimeout(timer);
  send();
}

// The phone is free when nothing of who has it waits here.
async function leave(url) {
  for (wait = 0; waiting().length;) {
    tell("leaving");
    await send();
    if (waiting().length) await new Promise((r) => setTimeout(r, 1000));
  }
  const r = await post(url, []);
  if (!r) { tell("offline"); return; }
  for (const n of store.names(draftName + who)) store.drop(n);
  location.href = base;
}

// One stream; it ends while the page is hidden, and is begun again until it stands.
let stream = null, back = 0;
function listen() {
  if (stream || document.hidden) return;
  const s = stream = new EventSource(base + "/events");
  s.onopen = () => { back = 0; if (waiting().length) { wait = 0; send(); } };
  s.onmessage = (e) => {
    if (!seat) { if (e.data !== "waits") location.href = base; return; }
    if (e.data !== page.dataset.seat) refresh(false);
  };
  s.onerror = () => {
    if (seat) offline();
    if (s.readyState !== EventSource.CLOSED) return; // it tries again by itself
    s.close();
    if (stream === s) stream = null;
    back = Math.min(Math.max(back * 2, 1000), 30000);
    setTimeout(() => { if (!seat) look(); else refresh(false); listen(); }, back);
  };
}
// Who waits for a name looks whether there still is something to wait for.
async function look() {
  const r = await ask(base, {});
  if (r?.ok && !r.text.includes("data-waits")) location.href = base;
}
document.addEventListener("visibilitychange", () => {
  if (document.hidden) { stream?.close(); stream = null; return; }
  listen();
  wait = 0;
  send();
});
addEventListener("online", () => { wait = 0; send(); });
addEventListener("popstate", () => refresh(true));
if (!seat && !page.hasAttribute("data-waits")) return;
bind(page);
listen();
if (!seat) return;
if (waiting().length) { tell("waiting"); send(); }
else if (part().dataset.scene === "kept") tell("saved");
})();
