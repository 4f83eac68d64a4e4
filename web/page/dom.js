// The few steps by which page parts are made and brought up to date without touching what has not changed.

/// @param attributes  null and undefined leave an attribute out
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) set(element, name, value);
  element.append(...children);
  return element;
}

export function set(element, name, value) {
  if (value === null || value === undefined) element.removeAttribute(name);
  else if (element.getAttribute(name) !== String(value)) element.setAttribute(name, value);
}

/// A figure keeps its unit: no line ends between them.
export const with_units = (text) => text.replace(/(\d) (?=(?:nm|kn)\b)/g, '$1\u00A0');

export function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/// Makes exactly these the element's children, in this order. What is there already is not moved when it need not be:
/// a moved element loses the focus.
export function arrange(parent, wanted) {
  const kept = new Set(wanted);
  for (const child of [...parent.children]) if (!kept.has(child)) child.remove();
  let next = parent.firstElementChild;
  for (const element of wanted) {
    // What has the focus stays where it is: what stands before it goes to the end, and is fetched from there in its turn.
    if (element.parentElement === parent && element.contains(document.activeElement)) {
      while (next !== element) {
        const passed = next;
        next = next.nextElementSibling;
        parent.append(passed);
      }
    }
    if (element === next) next = next.nextElementSibling;
    else parent.insertBefore(element, next);
  }
}
