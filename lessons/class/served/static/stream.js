// One stream for all of the instructor's pages in a browser: a browser keeps few connections to
// one computer, and a page for each would use them up. It ends while none of them is seen.
"use strict";
const pages = new Map(), streams = new Map();
function look() {
  const wanted = new Set([...pages.values()].filter((p) => p.seen).map((p) => p.url));
  for (const [url, s] of streams) if (!wanted.has(url)) { s.source.close(); streams.delete(url); }
  for (const url of wanted) {
    if (streams.has(url)) continue;
    const s = { source: new EventSource(url), last: "" };
    streams.set(url, s);
    s.source.onmessage = (e) => {
      s.last = e.data;
      for (const [port, p] of pages) if (p.seen && p.url === url) port.postMessage(e.data);
    };
    s.source.onerror = () => {
      for (const [port, p] of pages) if (p.seen && p.url === url) port.postMessage(""); // they look themselves
      if (s.source.readyState === EventSource.CLOSED) { streams.delete(url); setTimeout(look, 5000); }
    };
  }
}
onconnect = (e) => {
  const port = e.ports[0];
  port.onmessage = (m) => {
    if (m.data.gone) pages.delete(port);
    else {
      pages.set(port, m.data);
      const last = m.data.seen && streams.get(m.data.url)?.last;
      if (last) port.postMessage(last);
    }
    look();
  };
};
