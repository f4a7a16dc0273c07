// Renders the Markdown and the BBCode of reports with two renderers each, and
// fails where a reader would see something else: other text, other emphasis,
// marks that were left over, lists that fell apart, or no title.
//
//	node check.mjs PACKCHECK SETUP...

import { execFileSync } from "node:child_process";
import MarkdownIt from "markdown-it";
import { marked } from "marked";
import bbob from "@bbob/html";
import preset from "@bbob/preset-html5";
import YaBBCode from "ya-bbcode";
import { parse } from "node-html-parser";

const renderers = {
  markdown: {
    "markdown-it": (text) => new MarkdownIt().render(text),
    marked: (text) => marked.parse(text),
  },
  bbcode: {
    bbob: (text) => (bbob.default ?? bbob)(text, (preset.default ?? preset)()),
    "ya-bbcode": (text) => new YaBBCode().parse(text),
  },
};

const flat = (text) => text.replace(/\s+/g, " ").trim();
const bold = (tag) => /font-weight: *bold/.test(tag.getAttribute("style") ?? "") || ["STRONG", "B", "H1", "H2", "H3", "H4"].includes(tag.tagName);

// seen is what a reader sees: all words in order, the bold ones, the items.
function seen(html) {
  const root = parse(html.replace(/<br ?\/?>/g, "\n"));
  const emphasis = [];
  for (const tag of root.querySelectorAll("*")) {
    if (bold(tag) && !(tag.parentNode && tag.parentNode.tagName && bold(tag.parentNode))) emphasis.push(flat(tag.text));
  }
  return { words: flat(root.text), emphasis, items: root.querySelectorAll("li").length };
}

// The dialects write the box to tick each in its own way.
const sameWords = (text) => text.replace(/\[ \]|\( \)/g, "").replace(/[[\]()<>]/g, "").replace(/\s+/g, " ");

const faults = [];
const [packcheck, ...setups] = process.argv.slice(2);
for (const setup of setups) {
  for (const length of [[], ["--full"], ["--short"]]) {
    const name = [setup, ...length].join(" ");
    const fault = (text) => faults.push(`${name}: ${text}`);
    const views = {};
    for (const [dialect, list] of Object.entries(renderers)) {
      let source;
      try {
        source = execFileSync(packcheck, [setup, "--draws", "64", "--format", dialect, ...length], { encoding: "utf8" });
      } catch (e) {
        if (e.status !== 1) throw e; // 1 says that something is to be fixed
        source = e.stdout;
      }
      const written = source.split("\n").filter((line) => (dialect === "markdown" ? /^(-|\d+\.) / : /^\[\*\]/).test(line)).length;
      for (const [who, render] of Object.entries(list)) {
        const view = seen(render(source));
        views[`${dialect} by ${who}`] = view;
        const left = view.words.match(/\*\*|\\[[\]*_]|\[\/?(b|i|list|\*)\]|&(lt|gt|amp);|(^| )#{1,4} /);
        if (left) fault(`${dialect} by ${who} shows the mark ${JSON.stringify(left[0])} near ${JSON.stringify(view.words.slice(Math.max(0, left.index - 40), left.index + 40))}`);
        if (view.items !== written) fault(`${dialect} by ${who} has ${view.items} items, want ${written}`);
        if (!view.emphasis.length || !/^(NO|NOT YET|YES)/.test(view.emphasis[0])) fault(`${dialect} by ${who} does not begin with the answer: ${view.emphasis[0]}`);
      }
    }
    const [first, ...others] = Object.keys(views);
    for (const other of others) {
      for (const what of ["words", "emphasis"]) {
        const a = sameWords([views[first][what]].flat().join(" | ")), b = sameWords([views[other][what]].flat().join(" | "));
        if (a === b) continue;
        let at = 0;
        while (a[at] === b[at]) at++;
        fault(`${what} differ:\n  ${first}: ${a.slice(Math.max(0, at - 30), at + 60)}\n  ${other}: ${b.slice(Math.max(0, at - 30), at + 60)}`);
      }
    }
  }
}
if (faults.length) {
  console.error(faults.join("\n"));
  process.exit(1);
}
console.log(`${setups.length} setups in three lengths: every renderer shows the same`);
