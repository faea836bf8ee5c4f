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

  // The title stands above as text that wraps by itself; plotly.js would let it run out of the picture.
  function fit(chart, width) {
    var narrow = width < 500;
    delete chart.layout.title;
    // The legend flows in rows; how many there are says how much room it wants.
    var rows = 0, used = Infinity;
    chart.data.forEach(function (trace) {
      if (!trace.showlegend) return;
      var wide = trace.name.length * 6.8 + 68;
      if (used + wide > width - 60 - chart.layout.margin.r) { rows++; used = 0; }
      used += wide;
    });
    chart.layout.margin.t = rows * 27 + 12;
    chart.layout.height = Math.round(chart.layout.margin.t +
      Math.max(300, Math.min(width * 0.46, 460)) + (chart.layout.sliders ? 90 : 0));
    chart.config.displayModeBar = !narrow;
    if (narrow) widen(chart);
    spread(chart.layout.xaxis, width - 60 - chart.layout.margin.r);
  }

  // Figures at the ends of bars take a larger share of a narrow chart.
  function widen(chart) {
    var range = chart.layout.xaxis.range, share = (range[1] - range[0]) * 0.09;
    var ends = chart.data.some(function (trace) { return trace.fill === "toself" && trace.text; });
    if (ends) chart.layout.xaxis.range = [range[0] - share, range[1] + share];
  }

  // Labels of fixed ticks that would touch are left out; their ticks stay.
  function spread(axis, room) {
    if (axis.tickmode !== "array") return;
    var log = axis.type === "log", free = -Infinity;
    axis.ticktext = axis.ticktext.map(function (label, i) {
      var value = log ? Math.log10(axis.tickvals[i]) : axis.tickvals[i];
      var at = room * (value - axis.range[0]) / (axis.range[1] - axis.range[0]), half = label.length * 3.4;
      if (at - half < free + 4) return "";
      free = at + half;
      return label;
    });
  }

  function upgrade(figure) {
    if (figure.querySelector(".sw-live")) return;
    var data = figure.querySelector("script[data-sw-chart]"), still = figure.querySelector(".sw-wide");
    if (!data || !still) return;
    var place = document.createElement("div");
    place.className = "sw-live";
    figure.insertBefore(place, still);
    var name = figure.querySelector("title"), heading = document.createElement("p");
    heading.className = "sw-live-title";
    heading.style.cssText = "font-weight:700;margin:0";
    heading.textContent = name ? name.textContent : "";
    heading.hidden = !name;
    figure.insertBefore(heading, place);
    var stills = figure.querySelectorAll(".sw-still");
    function show(live) {
      place.style.display = heading.style.display = live ? "" : "none";
      stills.forEach(function (s) { s.style.display = live ? "none" : ""; });
    }
    function give(fault) {
      place.remove();
      heading.remove();
      stills.forEach(function (s) { s.style.display = ""; });
      figure.setAttribute("data-sw-state", "still");
      if (window.console) console.warn("chart left still: " + fault);
    }
    try {
      var chart = JSON.parse(themed(data.textContent));
      if (!figure.hasAttribute("data-sw-own")) fit(chart, place.clientWidth || 700);
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
