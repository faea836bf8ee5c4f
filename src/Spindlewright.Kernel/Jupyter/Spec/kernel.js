// Loaded by the notebook page when it opens a notebook of this kernel. plotly.js lies beside this file, so that charts
// draw without a network.
define(["module"], function (module) {
  "use strict";
  var folder = module.uri.replace(/kernel\.js.*$/, "");

  // A page may be dark whatever the reader's system prefers, and the other way round: what counts is what is seen.
  function markGround() {
    var place = document.querySelector(".output_area, .cell") || document.body, shade = null;
    for (; place && !shade; place = place.parentElement) {
      var parts = getComputedStyle(place).backgroundColor.match(/[\d.]+/g);
      if (parts && parts.length >= 3 && (parts.length < 4 || Number(parts[3]) > 0.5)) shade = parts;
    }
    var light = shade ? 0.299 * shade[0] + 0.587 * shade[1] + 0.114 * shade[2] : 255;
    document.documentElement.setAttribute("data-sw-ground", light < 128 ? "dark" : "light");
  }

  function addLook() {
    var style = document.createElement("style");
    style.textContent = /*CSS*/"";
    document.head.appendChild(style);
  }

  function addUpgrade() {
/*UPGRADE*/
  }

  var isWaiting = false;
  function upgradeSoon() {
    if (isWaiting) return;
    isWaiting = true;
    setTimeout(function () {
      isWaiting = false;
      markGround();
      window.spindlewrightUpgrade(document);
    }, 50);
  }

  function watch() {
    new MutationObserver(function (changes) {
      var isNew = changes.some(function (change) {
        return Array.prototype.some.call(change.addedNodes, function (node) {
          return node.nodeType === 1 && (node.matches("figure[data-sw-figure]") || node.querySelector("figure[data-sw-figure]"));
        });
      });
      if (isNew) upgradeSoon();
    }).observe(document.body, { childList: true, subtree: true });
  }

  function onload() {
    addLook();
    markGround();
    require([folder + "plotly.min.js"], function (Plotly) {
      window.Plotly = Plotly;
      addUpgrade();
      watch();
      upgradeSoon();
    }, function (fault) {
      console.warn("charts stay still: " + fault);
    });
  }

  return { onload: onload };
});
