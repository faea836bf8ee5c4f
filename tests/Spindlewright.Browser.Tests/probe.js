(() => {
  const seen = e => e.getClientRects().length > 0 && getComputedStyle(e).visibility !== "hidden";
  const named = e => e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + "." + [...e.classList].join(".");

  // Every text with words in a drawing that is shown.
  const texts = () => [...document.querySelectorAll("figure svg text")].filter(t => seen(t) && t.textContent.trim());

  const inside = (box, frame) => box.left >= frame.left - 1 && box.right <= frame.right + 1
    && box.top >= frame.top - 1 && box.bottom <= frame.bottom + 1;

  // The rectangle on screen that an element is clipped to; null for none.
  const clipOf = element => {
    const id = /url\(["']?#([^"')]+)/.exec(element.getAttribute("clip-path") || "");
    const rect = id && document.getElementById(id[1])?.querySelector("rect");
    if (!rect) return null;
    const at = element.getScreenCTM(), [x, y, w, h] = ["x", "y", "width", "height"].map(n => rect[n].baseVal.value);
    const from = new DOMPoint(x, y).matrixTransform(at), to = new DOMPoint(x + w, y + h).matrixTransform(at);
    return { left: from.x, top: from.y, right: to.x, bottom: to.y };
  };

  const cutTexts = () => texts().filter(text => {
    const box = text.getBoundingClientRect();
    for (let e = text; e && e.tagName !== "FIGURE"; e = e.parentElement) {
      if (e.tagName === "svg" && !inside(box, e.getBoundingClientRect())) return true;
      const clip = e.tagName !== "svg" && e.getScreenCTM ? clipOf(e) : null;
      if (clip && !inside(box, clip)) return true;
    }
    return false;
  }).map(t => t.closest("figure").id + ": " + t.textContent);

  const overflow = () => Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth);

  const wide = () => [...document.querySelectorAll("body *")].filter(e =>
    seen(e) && !e.closest(".sw-scroll, svg, .sw-live") &&
    e.getBoundingClientRect().right > document.documentElement.clientWidth + 1).map(named);

  const channels = css => (css.match(/[\d.]+/g) || []).map(Number);
  const luminance = css => {
    const [r, g, b] = channels(css).slice(0, 3).map(c => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  // WCAG 2.2, contrast ratio.
  const contrast = (a, b) => {
    const [low, high] = [luminance(a), luminance(b)].sort((p, q) => p - q);
    return (high + 0.05) / (low + 0.05);
  };
  const faintTexts = ratio => texts().filter(t =>
    contrast(getComputedStyle(t).fill, getComputedStyle(document.body).backgroundColor) < ratio)
    .map(t => t.closest("figure").id + ": " + t.textContent);

  window.swProbe = { texts, cutTexts, overflow, wide, faintTexts };
})()
