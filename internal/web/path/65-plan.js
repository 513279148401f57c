const LOOKING = 10000; // ms that a plan is looked for at the most
let planning; // ends the search that is under way

// forgetPlan takes away what belongs to another piece.
function forgetPlan() {
  planning?.abort();
  planning = undefined;
  $("plan").replaceChildren();
}

// order is what the service is asked for: many of what lies on the bench.
function order() {
  const { unit: of, decimal, sheet, ...rest } = lying.names;
  return { unit: of, ...(decimal && { decimal }), sheet, language: WORDS.language, items: [{ kind, name: titleOf(kind), count: $("count").value.trim(), ...rest }] };
}

// plan shows each better plan as it is found, until no better one is looked for
// or she takes what there is.
async function plan(event) {
  event.preventDefault();
  forgetPlan();
  const asked = order();
  if (!asked.sheet) return void $("plan").replaceChildren(node("p", { class: "wrong" }, say("plan-needs-sheet")));
  const run = planning = new AbortController();
  const told = node("p", {}, say("plan-looking"));
  const stop = node("button", { type: "button", id: "plan-stop", click: () => run.abort() }, say("plan-stop"));
  $("plan").replaceChildren(told, stop);
  let best;
  try {
    for await (const { plan: better } of planLines({ ...asked, effort_ms: LOOKING, pictures: pictures() }, run.signal)) {
      best = better;
      const said = planned(best);
      if (told.textContent !== said.map((part) => part.textContent ?? part).join("")) told.replaceChildren(...said); // or a reader reads it again
    }
  } catch (error) {
    if (planning === run && !run.signal.aborted) told.replaceChildren(node("span", { class: "wrong" }, error.problem ? complaint(error.problem) : say("unreachable")));
  }
  if (planning !== run) return;
  if (document.activeElement === stop) $("order").querySelector("button").focus();
  stop.remove();
  if (best) $("plan").append(...planSteps(best), enlarged(best.picture));
  else if (run.signal.aborted) forgetPlan();
}

// planLines are the plans of an order as they are found. A problem is thrown.
async function* planLines(asked, signal) {
  const answer = await fetch("/v1/yield", { method: "POST", signal, headers: { "Content-Type": "application/json", Accept: "application/x-ndjson" }, body: JSON.stringify(asked) });
  const refuse = (body) => Object.assign(new Error(), { problem: body.errors?.[0] ?? body });
  if (!answer.ok) throw refuse(await answer.json());
  const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
  for (let rest = ""; ;) {
    const { value, done } = await reader.read();
    if (done) return;
    const texts = (rest + value).split("\n");
    rest = texts.pop();
    for (const line of texts.filter(Boolean).map((text) => JSON.parse(text))) {
      if (line.problem) throw refuse(line.problem);
      yield line;
    }
  }
}

// planned says how good a plan is.
function planned({ sheets, used, proven, lower_bound }) {
  const share = Math.floor(100 * used);
  return [node("strong", {}, sheets === 1 ? say("plan-sheet", { used: share }) : say("plan-sheets", { n: sheets, used: share })), " ", proven ? say("plan-proven") : say("plan-open", lower_bound)];
}

// planSteps are what a plan leaves to keep and, unfolded, its steps: those of the plan that was told.
function planSteps({ work, plans, usable_offcuts }) {
  const kept = usable_offcuts.map(({ count, width, height }) => `${count} × ${length(width.reading)} × ${length(height.reading)}`);
  return [kept.length > 0 && node("p", {}, say("plan-keep", kept.join(", "))),
    node("details", {}, node("summary", {}, say("plan-settings", work.settings)),
      ...plans.flatMap(({ times, steps }) => [node("p", {}, say("plan-like", times)), node("ol", {}, ...steps.map((step) => node("li", {}, step)))]))].filter(Boolean);
}

$("order").addEventListener("submit", plan);
