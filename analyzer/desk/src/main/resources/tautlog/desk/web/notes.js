// Notes: read from and kept in the folder.
import { ask, send } from "./api.js";
import { el } from "./words.js";

/** A winch's notes, and those that name none; how many lines are no note. After adding one when it is given. */
export async function readNotes(winch, note) {
  const got = note ? await send("/api/notes", { winch, at_us: note.at, about: note.about, text: note.text }) : await ask("/api/notes");
  return { notes: got.notes.filter((one) => one.winch === winch || one.winch === null), unreadable: got.unreadable };
}

export function noteForm(choices, add) {
  const about = el("select");
  const text = el("textarea", { rows: 2, maxLength: 2000, required: true });
  const said = el("p", { role: "status" });
  let offered = [];
  const fill = () => {
    offered = choices();
    about.replaceChildren(...offered.map((one, i) => el("option", { value: String(i) }, one.words)));
  };
  const form = el("form", { onsubmit: async (e) => {
    e.preventDefault();
    const chosen = offered[Number(about.value)];
    try {
      await add({ at: chosen.at, about: chosen.about, text: text.value });
      text.value = "";
      said.textContent = "Kept in notes.jsonl in the folder.";
    } catch (trouble) {
      said.textContent = "Not kept: " + trouble.message;
    }
  } }, el("label", {}, "About ", about), el("label", {}, "Note ", text), el("button", { type: "submit" }, "Add the note"), said);
  return el("details", { className: "note", ontoggle: (e) => { if (e.target.open) fill(); } }, el("summary", {}, "Add a note"), form);
}
