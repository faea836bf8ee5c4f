// Puts interactive charts in the place of still drawings, one at a time so that the page stays quick.
// Where plotly.js is absent, or a chart fails, the drawing stays.
(function () {
  "use strict";
  var dark = /*DARK*/{};

  function themed(json) {
    if (!window.matchMedia || !window.matchMedia("(prefers-color-scheme: dark)").matches) return json;
    var style = getComputedStyle(document.documentElement);
    if (!style.getPropertyValue("--sw-paper")) return json; // The page itself has no dark form.
    return json.replace(/#[0-9a-f]{6}/g, function (shade) { return dark[shade] || shade; });
  }

  // The title is broken into lines by hand: plotly.js does not.
  function fit(chart, width) {
    var title = chart.layout.title, size = title.font.size;
    var room = Math.max(12, Math.floor((width - 20) / (size * 0.56)));
    var lines = [""];
    title.text.split(" ").forEach(function (word) {
      var last = lines.length - 1;
      if (lines[last] && lines[last].length + 1 + word.length > room) lines.push(word);
      else lines[last] += (lines[last] ? " " : "") + word;
    });
    title.text = lines.join("<br>");
    var entries = {};
    chart.data.forEach(function (t) { if (t.showlegend) entries[t.legendgroup] = t.legendgroup.length * 7 + 75; });
    // In the legend an entry is what the line stands for, not which series it belongs to.
    var names = Object.keys(entries), widest = names.reduce(function (w, n) { return Math.max(w, entries[n]); }, 1);
    var rows = Math.ceil(names.length / Math.max(1, Math.floor(width / widest)));
    chart.layout.margin.t = 14 + lines.length * size * 1.3 + 12;
    chart.layout.height = Math.round(chart.layout.margin.t + rows * 20 +
      Math.max(330, Math.min(width * 0.52, 520)) + (chart.layout.sliders ? 90 : 0));
    if (width < 500) chart.layout.margin.r = 24;
  }

  function upgrade(figure) {
    if (figure.querySelector(".sw-live")) return;
    var data = figure.querySelector("script[data-sw-chart]"), still = figure.querySelector(".sw-wide");
    if (!data || !still) return;
    var place = document.createElement("div");
    place.className = "sw-live";
    figure.insertBefore(place, still);
    var stills = figure.querySelectorAll(".sw-still");
    function show(live) {
      place.style.display = live ? "" : "none";
      stills.forEach(function (s) { s.style.display = live ? "none" : ""; });
    }
    function give(fault) {
      place.remove();
      stills.forEach(function (s) { s.style.display = ""; });
      figure.setAttribute("data-sw-state", "still");
      if (window.console) console.warn("chart left still: " + fault);
    }
    try {
      var chart = JSON.parse(themed(data.textContent));
      fit(chart, place.clientWidth || 700);
      place.setAttribute("role", "img");
      var words = figure.querySelector("desc");
      if (words) place.setAttribute("aria-label", words.textContent);
      window.Plotly.newPlot(place, chart).then(function () {
        show(true);
        figure.setAttribute("data-sw-state", "live");
      }, give);
    } catch (fault) { give(fault); }
  }

  function start(root) {
    if (!window.Plotly) return;
    var waiting = Array.prototype.slice.call((root || document).querySelectorAll("figure[data-sw-figure]"));
    (function next() {
      var figure = waiting.shift();
      if (!figure) return;
      upgrade(figure);
      setTimeout(next, 0);
    })();
  }

  window.spindlewrightUpgrade = start;
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", function () { start(); });
  else start();
})();
