// Small helpers. Text goes in as text, never as markup.

export const byId = (id) => document.getElementById(id);

export function say(el, text) {
  if (el.textContent !== text) el.textContent = text;
}

export function make(name, className, text) {
  const el = document.createElement(name);
  if (className) el.className = className;
  if (text !== undefined) el.textContent = text;
  return el;
}

export function fromTemplate(id) {
  return byId(id).content.firstElementChild.cloneNode(true);
}

// One child an item, kept in place by key, so that focus and reading position survive an update.
export function fill(parent, items, keyOf, create, update) {
  const before = new Map([...parent.children].map((child) => [child.dataset.key, child]));
  items.forEach((item, index) => {
    const key = keyOf(item);
    let child = before.get(key);
    before.delete(key);
    if (!child) {
      child = create(item);
      child.dataset.key = key;
    }
    update(child, item);
    if (parent.children[index] !== child) parent.insertBefore(child, parent.children[index] ?? null);
  });
  for (const gone of before.values()) gone.remove();
}

export function sentences(list, lines) {
  fill(list, lines, (line) => line, () => make('li'), (li, line) => say(li, line));
}
