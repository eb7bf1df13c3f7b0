"use strict";
// Draws the report from the data beside it. Text from the catalog enters the page as text nodes and attribute values only.
(function () {
  const data = JSON.parse(document.getElementById("data").textContent);
  const SHAPES = { error: "\u25A0", warning: "\u25B2", note: "\u25CF" };
  const PAGE = 60;
  const hosts = new Map();
  data.platforms.forEach(function (host) { hosts.set(host.id, host); });
  data.parts.forEach(function (host) { if (!hosts.has(host.id)) { hosts.set(host.id, host); } });
  let ladders = null;
  /** What slots offer for their price, by platform: read when it is first asked for, since it is much. */
  function laddersOn(platform) {
    if (ladders === null) {
      ladders = new Map(JSON.parse(document.getElementById("ladders").textContent).ladders.map(function (each) { return [each.platform, each]; }));
    }
    return ladders.get(platform);
  }
  const platformIds = new Set(data.platforms.map(function (platform) { return platform.id; }));
  const attributes = new Map(data.attributes.map(function (attribute) { return [attribute.id, attribute]; }));
  const rules = new Map(data.rules.map(function (rule) { return [rule.id, rule]; }));

  // ---- making elements

  function add(parent, children) {
    children.flat(Infinity).forEach(function (child) {
      if (child !== null && child !== undefined && child !== "") {
        parent.appendChild(typeof child === "object" ? child : document.createTextNode(String(child)));
      }
    });
    return parent;
  }

  function set(node, given) {
    Object.keys(given || {}).forEach(function (name) { node.setAttribute(name, given[name]); });
    return node;
  }

  function el(tag, given, ...children) {
    return add(set(document.createElement(tag), given), children);
  }

  function drawn(tag, given, ...children) {
    return add(set(document.createElementNS("http://www.w3.org/2000/svg", tag), given), children);
  }

  function link(words, ...address) {
    return el("a", { href: "#" + fragment(address) }, words);
  }

  function fragment(address) {
    return address.map(encodeURIComponent).join("/");
  }

  function many(number, one, several) {
    return number + " " + (number === 1 ? one : several);
  }

  /** A section that draws its body when it is first opened. */
  function folded(address, summary, body) {
    const box = el("details", address ? { id: fragment(address) } : {}, el("summary", {}, summary));
    box.draw = function () {
      if (box.draw.done) { return; }
      box.draw.done = true;
      box.appendChild(el("div", { class: "body" }, body()));
    };
    box.addEventListener("toggle", function () { if (box.open) { box.draw(); } });
    return box;
  }

  function table(caption, heads, rows, wide) {
    return el("div", { class: "scroll" + (wide ? " wide" : "") },
      el("table", {}, el("caption", {}, caption),
        el("thead", {}, el("tr", {}, heads.map(function (head) {
          return el("th", { scope: "col", class: head.number ? "number" : "" }, head.text || head);
        }))),
        el("tbody", {}, rows.map(function (row) {
          return el("tr", {}, row.map(function (cell, at) {
            const given = { "data-head": heads[at].text || heads[at], class: heads[at].number ? "number" : heads[at].whole ? "whole" : "" };
            return at === 0 ? el("th", Object.assign({ scope: "row" }, given), cell) : el("td", given, cell);
          }));
        }))));
  }


  /** Draws the first of many, and a button that draws more. */
  function inPages(items, draw, container, noun) {
    let shown = 0;
    const more = el("button", { type: "button" }, "");
    function next() {
      const rest = items.slice(shown, shown + PAGE);
      add(container, rest.map(draw));
      shown += rest.length;
      more.textContent = "Show " + Math.min(PAGE, items.length - shown) + " more of " + (items.length - shown) + " " + noun;
      more.hidden = shown >= items.length;
    }
    more.addEventListener("click", function () {
      const before = container.children.length;
      next();
      const first = container.children[before];
      const target = first && first.querySelector("a, summary");
      if (target) { target.focus(); }
    });
    next();
    return more;
  }

  function label(id) {
    const host = hosts.get(id);
    return host ? host.label : id;
  }

  function named(id) {
    if (!hosts.has(id)) { return el("code", {}, id); }
    return [link(label(id), platformIds.has(id) ? "platform" : "part", id), under(label(id), id)];
  }

  /** The id behind what it is labelled with, where that is another. */
  function under(label, id) {
    return label === id ? null : [" ", el("code", { class: "faint" }, id)];
  }

  /** A sentence in which what stands between backquotes is to be typed as it is. */
  function prose(sentence) {
    const pieces = sentence.split("`");
    return pieces.length % 2 === 0 ? sentence : pieces.map(function (piece, at) { return at % 2 === 1 ? el("code", {}, piece) : piece; });
  }

  function place(where) {
    return el("code", {}, data.files[where[0]] + ":" + where[1] + ":" + where[2]);
  }

  function severity(word) {
    return el("span", { class: "word " + word }, el("span", { "aria-hidden": "true" }, SHAPES[word] + " "), word);
  }

  // ---- findings

  const keys = new Map();
  /** How many findings speak of each part and platform. */
  const about = new Map();
  const numbered = data.parts.concat(data.platforms);
  data.findings.forEach(function (finding) {
    finding.names = finding.names.map(function (number) { return numbered[number].id; });
    finding.names.forEach(function (id) { about.set(id, (about.get(id) || 0) + 1); });
  });
  data.findings.forEach(function (finding) {
    const plain = fragment(["finding", finding.rule, finding.subject]);
    let key = plain;
    for (let n = 2; keys.has(key); n++) { key = plain + "/" + n; }
    finding.key = key;
    keys.set(key, finding);
  });

  /** All words of a finding, put together when they are first searched. */
  function wordsOf(finding) {
    if (!finding.sought) {
      finding.sought = [finding.rule, finding.subject, finding.message, finding.remedies.join(" "), finding.because.map(function (fact) { return fact[0]; }).join(" "),
        finding.where.map(function (where) { return data.files[where[0]]; }).join(" ")].join(" ").toLowerCase();
    }
    return finding.sought;
  }

  function findingItem(finding) {
    const facts = finding.because.length === 0 ? null : folded(null, many(finding.because.length, "fact", "facts") + " behind it", function () {
      return el("ol", {}, finding.because.map(function (fact) {
        return el("li", {}, fact[0], fact.length > 1 ? [" \u2014 ", place(fact.slice(1))] : null);
      }));
    });
    const item = el("article", { class: "item is-" + finding.severity, id: finding.key },
      el("p", { class: "top" }, severity(finding.severity), link(finding.rule, "rule", finding.rule), el("code", {}, finding.subject),
        el("a", { href: "#" + finding.key, "aria-label": "Link to this finding on " + finding.subject }, "link")),
      el("h3", { tabindex: "-1" }, finding.message),
      finding.waived ? el("p", {}, el("span", { class: "word" }, "waived: "), finding.waived) : null,
      el("p", { class: "faint" }, finding.where.map(function (where, at) { return [at > 0 ? ", " : "at ", place(where)]; })),
      facts,
      finding.remedies.length === 0 ? null : el("ul", {}, finding.remedies.map(function (remedy) { return el("li", {}, prose(remedy)); })),
      finding.names.length === 0 ? null : el("p", { class: "faint" }, "About ", finding.names.slice(0, 6).map(function (id, at) { return [at > 0 ? ", " : "", named(id)]; })));
    return item;
  }

  const reached = new Map();
  /** The parts to which fits lead from a platform, and the platform. */
  function reach(platform) {
    if (!reached.has(platform)) {
      const met = new Set([platform]), lists = new Set();
      met.forEach(function (id) {
        ((hosts.get(id) || {}).slots || []).forEach(function (slot) {
          if (!lists.has(slot.fits)) {
            lists.add(slot.fits);
            data.fits[slot.fits].forEach(function (fit) { met.add(fit[0]); });
          }
        });
      });
      reached.set(platform, met);
    }
    return reached.get(platform);
  }

  const filter = { severity: {}, rule: null, platform: null, part: null, text: null };
  const list = el("div", {});
  const tools = el("div", {});
  const count = el("p", { class: "count", role: "status", "aria-live": "polite" });

  function matching() {
    const words = filter.text.value.trim().toLowerCase().split(/\s+/).filter(Boolean);
    const part = filter.part.value.trim();
    const met = filter.platform.value === "" ? null : reach(filter.platform.value);
    return data.findings.filter(function (finding) {
      return filter.severity[finding.severity].checked
        && (filter.waived.checked || !finding.waived)
        && (filter.rule.value === "" || finding.rule === filter.rule.value)
        && (met === null || finding.platform === filter.platform.value || finding.platform === "" && finding.names.some(function (id) { return met.has(id); }))
        && (part === "" || finding.names.includes(part))
        && words.every(function (word) { return wordsOf(finding).includes(word); });
    });
  }

  function showFindings() {
    const found = matching();
    list.textContent = "";
    tools.textContent = "";
    count.textContent = found.length === data.findings.length
      ? many(found.length, "finding", "findings")
      : found.length + " of " + many(data.findings.length, "finding", "findings");
    tools.appendChild(inPages(found, findingItem, list, "findings"));
  }

  function choice(name, all, options) {
    return el("select", { id: name }, el("option", { value: "" }, all), options.map(function (option) {
      return el("option", { value: option[0] }, option[1]);
    }));
  }

  function field(words, control) {
    return el("label", { class: "field" }, words, control);
  }

  function findingsSection() {
    const tally = new Map();
    data.findings.forEach(function (finding) { tally.set(finding.rule, (tally.get(finding.rule) || 0) + 1); });
    const boxes = ["error", "warning", "note"].map(function (word) {
      const box = el("input", { type: "checkbox", id: "show-" + word });
      box.checked = true;
      filter.severity[word] = box;
      const number = data.findings.filter(function (finding) { return finding.severity === word && !finding.waived; }).length;
      return el("label", {}, box, severity(word), " " + number);
    });
    filter.waived = el("input", { type: "checkbox", id: "show-waived" });
    filter.waived.checked = true;
    filter.rule = choice("show-rule", "every rule", Array.from(tally.keys()).sort().map(function (rule) { return [rule, rule + " (" + tally.get(rule) + ")"]; }));
    filter.platform = choice("show-platform", "every platform", data.platforms.map(function (platform) { return [platform.id, platform.label]; }));
    filter.part = el("input", { type: "text", id: "show-part", autocomplete: "off", spellcheck: "false", list: "part-names" });
    filter.text = el("input", { type: "search", id: "show-text", autocomplete: "off" });
    const known = el("datalist", { id: "part-names" });
    filter.part.addEventListener("focus", function () { add(known, Array.from(about.keys()).sort().map(function (id) { return el("option", { value: id }); })); }, { once: true });
    const reset = el("button", { type: "button" }, "Show all again");
    reset.addEventListener("click", function () { clear(); showFindings(); });
    const form = el("form", { "aria-label": "Choose which findings are shown" },
      el("fieldset", {}, el("legend", {}, "Severity"), boxes, el("label", {}, filter.waived, "waived ones too " + data.summary.waived)),
      field("Rule", filter.rule), field("Platform", filter.platform), field("Part (its id)", filter.part), field("Words", filter.text),
      known, reset);
    form.addEventListener("submit", function (event) { event.preventDefault(); });
    let waiting = 0;
    form.addEventListener("input", function () { clearTimeout(waiting); waiting = setTimeout(showFindings, 80); });
    add(document.getElementById("findings"), [data.findings.length === 0 ? el("p", {}, "Nothing was found wrong or doubtful.") : form, count, el("div", { id: "rule-law" }), list, tools]);
    showFindings();
  }

  function clear() {
    Object.values(filter.severity).forEach(function (box) { box.checked = true; });
    filter.waived.checked = true;
    [filter.rule, filter.platform, filter.part, filter.text].forEach(function (control) { control.value = ""; });
    document.getElementById("rule-law").textContent = "";
  }

  // ---- slots

  /** Everything that can come into a slot: straight, or through chains of parts that carry others. */
  function waysIn(slot) {
    const met = new Map();
    let level = data.fits[slot.fits].map(function (fit) { return { part: fit[0], by: fit[1], chain: [] }; });
    while (level.length > 0) {
      const fresh = level.filter(function (way) {
        if (met.has(way.part)) { return false; }
        met.set(way.part, way);
        return true;
      });
      level = fresh.flatMap(function (way) {
        return (hosts.get(way.part) || { slots: [] }).slots.flatMap(function (open) {
          return data.fits[open.fits].filter(function (fit) { return !met.has(fit[0]); }).map(function (fit) {
            return { part: fit[0], by: fit[1], chain: way.chain.concat([[way.part, open.label]]) };
          });
        });
      });
    }
    const all = Array.from(met.values());
    const kinds = new Set(all.filter(function (way) { return way.chain.length === 0; }).map(function (way) { return (hosts.get(way.part) || {}).kind; }));
    all.forEach(function (way) {
      way.sort = way.chain.length === 0 ? "straight" : kinds.has((hosts.get(way.part) || {}).kind) ? "through an adapter" : "further out";
    });
    return all;
  }

  function figures(host) {
    return host.stats.map(function (stat) {
      const attribute = attributes.get(stat[0]);
      return (attribute ? attribute.label : stat[0]) + " " + stat[1] + (stat[2] ? " when loaded" : "");
    }).join(", ");
  }

  function price(host) {
    return host.offers.length === 0 ? el("span", { class: "faint" }, "no source") : host.offers[0][1] + " at " + host.offers[0][0];
  }

  function slotWords(slot) {
    const ways = data.fits[slot.fits].length;
    return [slot.required ? "must be filled" : "may stay empty", slot.most === 1 ? "" : "up to " + slot.most + " parts", slot.notches === null ? "" : many(slot.notches, "notch", "notches"),
      ways === 0 ? "nothing fits" : many(ways, "part fits", "parts fit") + " straight"].filter(Boolean).join(", ");
  }

  function waysTable(caption, ways) {
    const box = el("div", {});
    const shown = table(caption, ["Part", "Way in", "Figures", "Cheapest"], [], true);
    const body = shown.querySelector("tbody");
    const more = inPages(ways, function (way) {
      const host = hosts.get(way.part) || { stats: [], offers: [] };
      return el("tr", {}, el("th", { scope: "row" }, named(way.part)),
        el("td", {}, way.chain.length === 0 ? "straight, by " + way.by
          : ["through ", way.chain.map(function (step, at) { return [at > 0 ? ", then " : "", named(step[0]), " (" + step[1] + ")"]; }), ", by " + way.by]),
        el("td", {}, figures(host)), el("td", {}, price(host)));
    }, body, "parts");
    return add(box, [shown, more]);
  }

  // ---- cost against benefit

  const STANDINGS = ["\u25CF rung", "\u25C7 between", "\u2715 dominated"];

  function markShape(standing, x, y) {
    switch (standing) {
      case 0: return drawn("circle", { cx: x, cy: y, r: 6, class: "rung" });
      case 1: return drawn("path", { d: "M" + x + " " + (y - 7) + " l7 7 l-7 7 l-7 -7 Z", class: "between" });
      default: return drawn("path", { d: "M" + (x - 5) + " " + (y - 5) + " l10 10 m0 -10 l-10 10", class: "dominated" });
    }
  }

  /** An exact amount for people: thousands apart, two places where it is not whole. */
  function money(exact) {
    const pieces = exact.split(".");
    return pieces[0].replace(/\B(?=(\d{3})+$)/g, ",") + (pieces.length > 1 ? "." + (pieces[1] + "0").slice(0, 2) : "");
  }

  /** Marks by rising cost, numbered; the numbers stand in the table below. Rungs are joined. */
  function plot(marks, name) {
    const WIDE = Math.max(250, Math.min(720, document.documentElement.clientWidth - 120)), HIGH = 280, LEFT = 44, BELOW = 44, EDGE = 24;
    const costs = marks.map(function (mark) { return Number(mark[1]); }), benefits = marks.map(function (mark) { return Number(mark[2]); });
    function scale(values, from, to) {
      const least = Math.min(...values), most = Math.max(...values);
      return function (value) { return most === least ? (from + to) / 2 : from + (value - least) / (most - least) * (to - from); };
    }
    const x = scale(costs, LEFT + EDGE, WIDE - EDGE), y = scale(benefits, HIGH - BELOW - EDGE, EDGE);
    function at(mark) { return x(Number(mark[1])).toFixed(1) + " " + y(Number(mark[2])).toFixed(1); }
    const rungs = marks.filter(function (mark) { return mark[0] === 0; });
    const shapes = [
      drawn("path", { class: "axis", d: "M" + LEFT + " " + EDGE / 2 + " V" + (HIGH - BELOW) + " H" + (WIDE - EDGE / 2) }),
      drawn("text", { x: LEFT, y: HIGH - 6, class: "small" }, "cost, from " + money(marks[costs.indexOf(Math.min(...costs))][1]) + " to " + money(marks[costs.indexOf(Math.max(...costs))][1]) + " \u2192"),
      drawn("text", { x: -(HIGH - BELOW), y: 18, transform: "rotate(-90)", class: "small" }, "benefit, " + marks[benefits.indexOf(Math.min(...benefits))][2] + " to " + marks[benefits.indexOf(Math.max(...benefits))][2] + " \u2192"),
      rungs.length < 2 ? null : drawn("path", { class: "climb", d: "M" + rungs.map(at).join(" L") })];
    const numbers = [];
    marks.forEach(function (mark, number) {
      const left = x(Number(mark[1])), down = y(Number(mark[2]));
      numbers.push(drawn("text", { x: left + 9, y: down + (mark[0] === 0 ? -6 : 14), class: "small over" }, number + 1));
      shapes.push(drawn("g", { class: "mark" }, drawn("title", {}, (number + 1) + ", " + STANDINGS[mark[0]].slice(2) + ": cost " + money(mark[1]) + ", benefit " + mark[2]),
        markShape(mark[0], Number(left.toFixed(1)), Number(down.toFixed(1)))));
    });
    return el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": name },
      drawn("svg", { width: WIDE, height: HIGH, viewBox: "0 0 " + WIDE + " " + HIGH, role: "img", "aria-label": name + ". The table below tells the same.", class: "plot" }, shapes, numbers));
  }

  function marksTable(marks) {
    return table("The marks, by number", [{ text: "No.", number: true }, { text: "Standing", whole: true }, { text: "Cost", number: true }, { text: "Benefit", number: true }, { text: "Price of a step", number: true }, "Parts"],
      marks.map(function (mark, number) {
        return [number + 1, STANDINGS[mark[0]], money(mark[1]), mark[2], mark.length > 4 ? mark[4].replace(/\d+/, money) : "\u2014",
          mark[3].length === 0 ? "left empty" : mark[3].map(function (part, at) { return [at > 0 ? " + " : "", link(data.parts[part].label, "part", data.parts[part].id)]; })];
      }), true);
  }

  /** Plots that stand for several platforms, by the address that each would have alone. */
  const shared = new Map();

  function ladderBox(address, words, ladder, slot, lens) {
    return folded(address, words, function () {
      if (!ladder.told) { return [el("p", {}, "So much fits together here that comparing it takes too long for a page; ask the command ladder for this slot and lens.")]; }
      const groups = ladder.groups.filter(function (group) { return group.marks.length > 0; });
      if (groups.length === 0) { return [el("p", {}, "Nothing that can be bought goes there.")]; }
      return [groups.map(function (group) {
        const marks = group.marks.slice().sort(function (one, other) { return Number(one[1]) - Number(other[1]) || Number(one[2]) - Number(other[2]); });
        return [el("h4", {}, "Serving " + group.serves), plot(marks, slot.label + " for " + lens.label + ", cost against benefit, serving " + group.serves), marksTable(marks),
          group.more > 0 ? el("p", {}, many(group.more, "more is", "more are") + " left out here, those of the least benefit off the rungs; the command ladder tells them.") : null];
      }), ladder.left > 0 ? el("p", {}, many(ladder.left, "other group", "other groups") + " of assemblies serve more roles at once; the command ladder tells them.") : null];
    });
  }

  /** What a slot offers for its price: on a platform a box for each lens, on a part one for each lens and for platforms that are alike in it. */
  function tradeOffs(host, slot) {
    if (data.lenses.length === 0 || data.fits[slot.fits].length === 0) { return null; }
    const own = platformIds.has(host.id);
    const head = [el("h4", {}, "Cost against benefit" + (data.bought ? ", bought as " + data.bought : "")),
      el("p", { class: "faint" }, STANDINGS[0] + ": worth climbing to, joined by a line; " + STANDINGS[1] + ": a mix of two rungs gives more for the same cost; " + STANDINGS[2] + ": another costs no more and brings no less.")];
    const boxes = [];
    let open = null, left = 0;
    (own ? [host] : data.platforms.filter(function (platform) { return reach(platform.id).has(host.id); })).forEach(function (platform) {
      const ladders = laddersOn(platform.id);
      if (!ladders) { return; }
      if (ladders.undecided !== null) { open = ladders.undecided; return; }
      const found = ladders.slots.find(function (each) { return each.host === host.id && each.slot === slot.id; });
      if (!found) { left += ladders.left > 0 ? 1 : 0; return; }
      found.lenses.forEach(function (ladder) {
        const same = boxes.find(function (each) { return each.ladder.lens === ladder.lens && JSON.stringify(each.ladder) === JSON.stringify(ladder); });
        if (same) { same.on.push(platform); } else { boxes.push({ ladder: ladder, on: [platform] }); }
      });
    });
    if (boxes.length === 0) {
      return open !== null ? [head, el("p", {}, "Not decided: " + open)] : left > 0 ? [head, el("p", {}, "The catalog has more slots than a page can plot; ask the command ladder for this one.")] : null;
    }
    return [head, data.lenses.map(function (lens) {
      return boxes.filter(function (box) { return box.ladder.lens === lens.id; }).map(function (box) {
        const on = box.on.map(function (platform) { return platform.label; }).join(", ");
        const address = own ? ["plot", host.id, slot.id, lens.id] : ["plot", box.on[0].id, host.id, slot.id, lens.id];
        box.on.forEach(function (platform) { shared.set(fragment(["plot", platform.id, host.id, slot.id, lens.id]), fragment(address)); });
        return ladderBox(address, "For " + lens.label + (own ? "" : ", on " + on), box.ladder, slot, lens);
      });
    })];
  }

  function slotBox(host, slot) {
    return folded(["slot", host.id, slot.id], [el("strong", {}, slot.label), under(slot.label, slot.id), el("span", { class: "faint" }, " " + slotWords(slot))], function () {
      const ways = waysIn(slot);
      const of = function (sort) { return ways.filter(function (way) { return way.sort === sort; }); };
      const far = of("further out");
      return [
        ways.length === 0 ? el("p", {}, "No part of the catalog fits here.") : waysTable("Straight into " + slot.label, of("straight")),
        of("through an adapter").length === 0 ? null : waysTable("Parts of these kinds that come in through an adapter", of("through an adapter")),
        far.length === 0 ? null : folded(null, many(far.length, "other part", "other parts") + " further out on these", function () { return waysTable("Further out", far); }),
        tradeOffs(host, slot)];
    });
  }

  /** The slot tree of a platform as rows from left to right; what several parts offer under one name is one box. */
  function slotTree(platform) {
    const WIDE = 178, HIGH = 44, GAP = 34, STEP = 18, DEEP = 4, MOST = 14;
    // On a narrow screen what hangs on a slot stands below it, a little further in.
    const narrow = document.documentElement.clientWidth < 700;
    const rows = [];
    let next = narrow ? 1 : 0;
    function slotsBeyond(slots) {
      const groups = new Map();
      const bearers = new Set(slots.flatMap(function (each) { return data.fits[each.slot.fits].map(function (fit) { return fit[0]; }); }));
      bearers.forEach(function (id) {
        ((hosts.get(id) || {}).slots || []).forEach(function (slot) {
          if (!groups.has(slot.label)) { groups.set(slot.label, []); }
          groups.get(slot.label).push({ host: id, slot: slot });
        });
      });
      return Array.from(groups.values());
    }
    function lay(group, depth, passed) {
      const names = passed.concat([group[0].slot.label]);
      const own = narrow ? next++ : -1;
      const inner = depth >= DEEP ? [] : slotsBeyond(group).filter(function (each) { return !names.includes(each[0].slot.label); });
      const children = inner.slice(0, MOST).map(function (each) { return lay(each, depth + 1, names); });
      const row = narrow ? own : children.length === 0 ? next++ : children[0].row;
      const node = { group: group, depth: depth, row: row, children: children, left: inner.length - children.length };
      rows.push(node);
      return node;
    }
    const tops = platform.slots.map(function (slot) { return lay([{ host: platform.id, slot: slot }], 1, []); });
    const deepest = rows.reduce(function (most, node) { return Math.max(most, node.depth); }, 0);
    const width = narrow ? deepest * STEP + WIDE + 4 : (deepest + 1) * (WIDE + GAP) - GAP + 4;
    const height = Math.max(1, next) * (HIGH + 8);
    function top(row) { return row * (HIGH + 8) + 4; }
    function left(depth) { return depth * (narrow ? STEP : WIDE + GAP) + 2; }
    function short(words) { return words.length > 23 ? words.slice(0, 22) + "\u2026" : words; }
    function box(depth, row, words, under, kind, address) {
      const x = left(depth);
      const shape = [drawn("title", {}, words + ", " + under),
        drawn("rect", { x: x, y: top(row), width: WIDE, height: HIGH, rx: 3 }),
        drawn("text", { x: x + 9, y: top(row) + 18 }, short(words)),
        drawn("text", { x: x + 9, y: top(row) + 35, class: "small" }, under)];
      return drawn("g", { class: kind }, address ? drawn("a", { href: "#" + fragment(address) }, shape) : shape);
    }
    function line(depth, from, to) {
      if (narrow) { return drawn("path", { d: "M" + (left(depth) + STEP / 2) + " " + (top(from) + HIGH) + " V" + (top(to) + HIGH / 2) + " H" + left(depth + 1) }); }
      const x = left(depth) + WIDE, y = top(from) + HIGH / 2, z = top(to) + HIGH / 2;
      return drawn("path", { d: "M" + x + " " + y + " H" + (x + GAP / 2) + " V" + z + " H" + (x + GAP) });
    }
    const marks = [];
    tops.forEach(function (node) { marks.push(line(0, 0, node.row)); });
    rows.forEach(function (node) { node.children.forEach(function (child) { marks.push(line(node.depth, node.row, child.row)); }); });
    marks.push(box(0, 0, platform.label, many(platform.slots.length, "slot", "slots"), "root", null));
    rows.forEach(function (node) {
      const first = node.group[0];
      const fitting = new Set(node.group.flatMap(function (each) { return data.fits[each.slot.fits].map(function (fit) { return fit[0]; }); })).size;
      const must = node.group.every(function (each) { return each.slot.required; });
      const under = (fitting === 0 ? "nothing fits" : many(fitting, "part", "parts")) + (must ? ", must" : "")
        + (node.depth > 1 ? ", on " + many(node.group.length, "part", "parts") : "") + (node.left > 0 ? ", +" + node.left : "");
      marks.push(box(node.depth, node.row, first.slot.label, under, must ? "must" : "may", node.group.length === 1 ? ["slot", first.host, first.slot.id] : null));
    });
    return el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Slot tree of " + platform.label + ", drawn" },
      drawn("svg", { width: width, height: height, viewBox: "0 0 " + width + " " + height, role: "group", "aria-label": "Slots of " + platform.label }, marks));
  }

  function platformBox(platform) {
    const number = about.get(platform.id) || 0;
    return folded(["platform", platform.id], [el("strong", {}, platform.label), under(platform.label, platform.id),
      el("span", { class: "faint" }, " " + many(platform.slots.length, "slot", "slots") + ", " + many(reach(platform.id).size - 1, "part", "parts") + " within reach"
        + (number > 0 ? ", " + many(number, "finding", "findings") : ""))], function () {
      return [
        el("p", {}, "Base figures: " + (figures(platform) || "none stated") + "."),
        el("h3", {}, "Slot tree"),
        el("p", { class: "faint" }, "From the platform outward. A thick edge and the word \u201Cmust\u201D mark a slot that must be filled; what several parts offer under one name is drawn once."),
        slotTree(platform),
        el("h3", {}, "What can sit where"),
        platform.slots.map(function (slot) { return slotBox(platform, slot); })];
    });
  }

  function platformsSection() {
    add(document.getElementById("platforms"), data.platforms.length === 0 ? [el("p", {}, "The catalog has no platform.")] : data.platforms.map(platformBox));
  }

  // ---- builds

  function buildTree(rows) {
    return el("ul", {}, rows.map(function (row) {
      return el("li", {}, el("span", { class: "faint" }, row.slot + ": "), row.part === null ? el("span", { class: "faint" }, "empty") : named(row.part),
        row.price ? el("span", { class: "faint" }, " \u2014 " + row.price) : null,
        row.slots.length > 0 ? buildTree(row.slots) : null);
    }));
  }

  function margins(build) {
    return build.limits.map(function (limit) {
      return table(limit.label + " (" + limit.says + ")", ["Worn", { text: "Value", number: true }, { text: "Bound", number: true }, "Margin"],
        limit.worn.map(function (worn) {
          return [worn.outfit + (worn.own ? " (this build)" : ""), worn.value, worn.bound,
            worn.told ? el("span", { class: worn.holds ? (worn.close ? "warning" : "good") : "error" }, (worn.holds ? "\u25CB keeps: " : "\u2716 breaks: ") + worn.margin) : el("span", { class: "warning" }, worn.margin)];
        }), true);
    });
  }

  const SIGNS = { better: "\u25B3 better", worse: "\u25BD worse", same: "= same", other: "\u25C7 other" };

  function buildBox(build) {
    return folded(["build", build.id], [el("strong", {}, build.label), under(build.label, build.id), " ",
      el("span", { class: build.valid ? "word good" : "word error" }, build.valid ? "\u25CB valid" : "\u2716 not valid"),
      el("span", { class: "faint" }, " on " + label(build.platform) + (build.findings.length > 0 ? ", " + many(build.findings.length, "finding", "findings") : ""))], function () {
      return [
        el("p", { class: "faint" }, build.says, " \u2014 ", place(build.where)),
        el("p", {}, "Cost: " + build.cost + "."),
        build.lost.length === 0 ? null : el("ul", { class: "error" }, build.lost.map(function (lost) { return el("li", {}, lost); })),
        build.findings.length === 0 ? null : [el("h3", {}, "Findings"), el("ul", {}, build.findings.map(function (at) {
          const finding = data.findings[at];
          return el("li", {}, severity(finding.severity), " ", el("a", { href: "#" + finding.key }, finding.message));
        }))],
        el("h3", {}, "What sits where"),
        build.tree.length === 0 ? el("p", {}, "Nothing of it could be laid out.") : el("div", { class: "tree" }, buildTree(build.tree)),
        build.totals.length === 0 ? null : table("Totals, " + build.against, ["Figure", { text: "Before", number: true }, { text: "After", number: true }, { text: "Change", number: true }, "Standing"],
          build.totals.map(function (total) { return [total[0], total[1], total[2], total[3], el("span", { class: total[4] === "better" ? "good" : total[4] === "worse" ? "error" : "faint" }, SIGNS[total[4]])]; }), true),
        build.limits.length === 0 ? null : [el("h3", {}, "Limits, with each outfit"), margins(build)]];
    });
  }

  function buildsSection() {
    add(document.getElementById("builds"), data.builds.length === 0
      ? [el("p", {}, "The report was made without builds; name some with "), el("code", {}, "--builds")]
      : data.builds.map(buildBox));
  }

  // ---- parts

  const homes = new Map();
  function homesOf(part) {
    if (homes.size === 0) {
      hosts.forEach(function (host) {
        host.slots.forEach(function (slot) {
          data.fits[slot.fits].forEach(function (fit) {
            if (!homes.has(fit[0])) { homes.set(fit[0], []); }
            homes.get(fit[0]).push({ host: host, slot: slot, by: fit[1] });
          });
        });
      });
    }
    return homes.get(part) || [];
  }

  function partCard(part) {
    const found = data.findings.filter(function (finding) { return finding.names.includes(part.id); });
    const places = homesOf(part.id);
    const fitting = el("ul", {});
    const more = inPages(places, function (home) {
      return el("li", {}, link(home.host.label + " / " + home.slot.label, "slot", home.host.id, home.slot.id), ", by " + home.by);
    }, fitting, "slots");
    return el("article", { class: "item", id: fragment(["part", part.id]) },
      el("h3", { tabindex: "-1" }, part.label, under(part.label, part.id)),
      el("p", {}, part.kind ? "Kind: " + part.kind + ". " : "", "Figures: " + (figures(part) || "none stated") + "."),
      el("h4", {}, "Bought"),
      part.offers.length === 0 ? el("p", {}, "Nothing sells it.") : el("ul", {}, part.offers.map(function (offer) { return el("li", {}, offer[1] + " at " + offer[0] + (offer[2] ? ", seen " + offer[2] : "")); })),
      el("h4", {}, "Fits"), places.length === 0 ? el("p", {}, "No slot of the catalog.") : [fitting, more],
      part.slots.length === 0 ? null : [el("h4", {}, "Carries"), part.slots.map(function (slot) { return slotBox(part, slot); })],
      found.length === 0 ? null : [el("h4", {}, "Findings"), el("ul", {}, found.slice(0, PAGE).map(function (finding) { return el("li", {}, severity(finding.severity), " ", el("a", { href: "#" + finding.key }, finding.message)); }))]);
  }

  const card = el("div", { id: "part-shown" });
  const names = el("ul", { id: "part-list" });
  const more = el("div", {});
  const partCount = el("p", { class: "count", role: "status", "aria-live": "polite" });
  const sought = el("input", { type: "search", id: "seek-part", autocomplete: "off" });

  function showNames() {
    const words = sought.value.trim().toLowerCase().split(/\s+/).filter(Boolean);
    const found = data.parts.filter(function (part) {
      const text = (part.id + " " + part.label + " " + part.kind).toLowerCase();
      return words.every(function (word) { return text.includes(word); });
    });
    names.textContent = "";
    more.textContent = "";
    partCount.textContent = found.length === data.parts.length ? many(found.length, "part", "parts") : found.length + " of " + many(data.parts.length, "part", "parts");
    more.appendChild(inPages(found, function (part) { return el("li", {}, named(part.id), el("span", { class: "faint" }, part.kind ? " " + part.kind : "")); }, names, "parts"));
  }

  function partsSection() {
    const all = folded(null, "All parts by name", function () {
      let waiting = 0;
      sought.addEventListener("input", function () { clearTimeout(waiting); waiting = setTimeout(showNames, 80); });
      showNames();
      return [field("Words in a part\u2019s id, name or kind", sought), partCount, names, more];
    });
    all.id = "part-index";
    add(document.getElementById("parts"), [card, all]);
  }

  // ---- addresses

  function opened(id) {
    const box = document.getElementById(id) || document.getElementById(shared.get(id));
    if (box && box.draw) { box.draw(); box.open = true; }
    return box;
  }

  function showPart(id) {
    const part = hosts.get(id);
    card.textContent = "";
    return part && !platformIds.has(id) ? card.appendChild(partCard(part)) : null;
  }

  function arrive(target) {
    document.querySelectorAll(".aimed").forEach(function (old) { old.classList.remove("aimed"); });
    if (!target) { return; }
    target.classList.add("aimed");
    target.scrollIntoView({ block: "start" });
    const focus = target.matches("section") ? target : target.querySelector("h3, summary");
    if (focus) { focus.focus({ preventScroll: true }); }
  }

  function decoded(word) {
    try { return decodeURIComponent(word); } catch (broken) { return word; }
  }

  function follow() {
    const written = location.hash.slice(1);
    if (written === "") { return; }
    const words = written.split("/").map(decoded);
    const name = words.map(encodeURIComponent).join("/");
    switch (words[0]) {
      case "finding": {
        const finding = keys.get(name);
        if (!finding) { arrive(document.getElementById("findings")); return; }
        if (!document.getElementById(name)) {
          clear();
          filter.text.value = "";
          filter.rule.value = finding.rule;
          showFindings();
          while (!document.getElementById(name) && !tools.firstChild.hidden) { tools.firstChild.click(); }
        }
        const item = document.getElementById(name);
        const facts = item && item.querySelector("details");
        if (facts) { facts.draw(); facts.open = true; }
        arrive(item);
        break;
      }
      case "rule": {
        clear();
        filter.rule.value = words[1];
        showFindings();
        const rule = rules.get(words[1]);
        if (rule) { add(document.getElementById("rule-law"), [el("p", {}, el("strong", {}, rule.id + ": "), rule.law)]); }
        arrive(document.getElementById("findings"));
        break;
      }
      case "slot": {
        if (platformIds.has(words[1])) { opened(fragment(["platform", words[1]])); } else { showPart(words[1]); }
        arrive(opened(name));
        break;
      }
      case "plot": {
        if (words.length > 4) {
          showPart(words[2]);
          opened(fragment(["slot", words[2], words[3]]));
        } else {
          opened(fragment(["platform", words[1]]));
          opened(fragment(["slot", words[1], words[2]]));
        }
        arrive(opened(name));
        break;
      }
      case "part": arrive(showPart(words[1])); break;
      default: arrive(opened(name));
    }
  }

  // ---- the page

  const who = data.catalog.id || "A catalog without a name";
  document.title = who + " " + (data.catalog.patch || "") + " \u2014 catalog report";
  document.getElementById("title").textContent = who + (data.catalog.patch ? ", patch " + data.catalog.patch : "");
  document.getElementById("standing").textContent = [many(data.summary.error, "error", "errors"), many(data.summary.warning, "warning", "warnings"), many(data.summary.note, "note", "notes"),
    data.summary.waived + " waived"].join(", ") + "; " + many(data.platforms.length, "platform", "platforms") + ", " + many(data.parts.length, "part", "parts") + ", " + many(data.builds.length, "build", "builds");
  document.getElementById("made-by").textContent = "Made by Fettle " + data.fettle + ".";
  findingsSection();
  platformsSection();
  buildsSection();
  partsSection();
  window.addEventListener("hashchange", follow);
  window.addEventListener("beforeprint", function () {
    document.querySelectorAll("#findings details, #builds > details").forEach(function (box) { box.draw(); box.open = true; });
  });
  follow();
  // The browser looks for the fragment too, once all is loaded, and takes the focus away.
  window.addEventListener("load", function () { setTimeout(follow, 0); });
})();
