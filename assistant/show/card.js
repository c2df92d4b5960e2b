// Ticks are remembered on this device, per card; without script or storage the card reads the same.
(() => {
  const key = "camp-card-" + document.body.dataset.card;
  let ticked;
  try { ticked = new Set(JSON.parse(localStorage.getItem(key) || "[]")); } catch { return; }
  for (const box of document.querySelectorAll("input[data-tick]")) {
    box.checked = ticked.has(box.dataset.tick);
    box.addEventListener("change", () => {
      if (box.checked) ticked.add(box.dataset.tick); else ticked.delete(box.dataset.tick);
      try { localStorage.setItem(key, JSON.stringify([...ticked])); } catch { /* a full or closed store loses only the tick */ }
    });
  }
})();
