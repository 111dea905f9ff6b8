// Finds what a person would point at, by the words they would use for it.
// Arguments: the kind, its name, and the headings of the parts of the page around it, the outer first.
// Returns { target } or { why }, the reason why there is not exactly one.

const [kind, wanted, parts] = arguments;

const SELECTORS = {
  field: 'textarea, input:not([type=radio], [type=checkbox], [type=file], [type=button], [type=submit], [type=hidden])',
  list: 'select',
  file: 'input[type=file]',
  button:
    'button, a[href], summary, input[type=submit], input[type=button], input[type=radio], input[type=checkbox],' +
    ' [role=button], [role=link], [role=tab], [role=menuitem], [role=switch]',
};
const PARTS =
  'section, fieldset, article, form, dialog, details, nav, li, tr,' +
  ' [role=group], [role=region], [role=dialog], [role=listitem]';
const HEADINGS = 'h1, h2, h3, h4, h5, h6, legend, summary, th[scope=row]';

const words = (text) => (text ?? '').replace(/\s+/g, ' ').trim();

// Text as it is laid out, without the choices of a list that stands inside a label.
function textOf(element) {
  if (!element) return '';
  const text = words(element.innerText ?? element.textContent);
  const inner = [...element.querySelectorAll('select, textarea')].map((part) => words(part.innerText));
  return words(inner.reduce((rest, part) => rest.replace(part, ' '), text));
}

// In the order in which a screen reader chooses the name.
function nameOf(element) {
  const ids = element.getAttribute('aria-labelledby')?.split(/\s+/) ?? [];
  const by = words(ids.map((id) => textOf(document.getElementById(id))).join(' '));
  if (by) return by;
  const own = words(element.getAttribute('aria-label'));
  if (own) return own;
  if (element.labels?.length) return words([...element.labels].map(textOf).join(' '));
  return textOf(element) || words(element.value);
}

function partName(part) {
  const ids = part.getAttribute('aria-labelledby')?.split(/\s+/) ?? [];
  const by = words(ids.map((id) => textOf(document.getElementById(id))).join(' '));
  return by || words(part.getAttribute('aria-label')) || textOf(part.querySelector(HEADINGS));
}

// The whole name counts more than its first words, by which a person would know it too:
// "Width" for "Width, ft", and "Change" for "Change the kitchen" inside the kitchen's part.
function called(name, all, nameIt) {
  const named = all.map((element) => [nameIt(element), element]);
  const whole = named.filter(([own]) => own === name);
  const chosen = whole.length ? whole : named.filter(([own]) => startsWith(own, name));
  return chosen.map(([, element]) => element);
}

const startsWith = (own, name) => own.startsWith(name) && !/^[\p{L}\p{N}]/u.test(own.slice(name.length));

const list = (all, nameIt) => [...new Set(all.map(nameIt).filter(Boolean))].map((name) => `"${name}"`).join(', ') || 'none';

const seen = (element) => kind === 'file' || element.checkVisibility({ visibilityProperty: true });

let around = document;
for (const heading of parts) {
  const all = [...around.querySelectorAll(PARTS)].filter((part) => part.checkVisibility());
  const found = called(heading, all, partName);
  // A part may begin with another part, and both then begin with the same heading: the inner is meant.
  const inner = found.filter((part) => !found.some((other) => other !== part && part.contains(other)));
  if (inner.length !== 1) {
    return { why: `${inner.length || 'no'} parts of the page are headed "${heading}"; there are ${list(all, partName)}` };
  }
  around = inner[0];
}

const all = [...around.querySelectorAll(SELECTORS[kind])].filter(seen);
const found = called(wanted, all, nameOf);
if (found.length !== 1) {
  return { why: `${found.length || 'no'} ${kind}s are called "${wanted}"; there are ${list(all, nameOf)}` };
}
const [element] = found;
if (element.disabled || element.getAttribute('aria-disabled') === 'true') {
  return { why: `the ${kind} "${wanted}" is disabled` };
}
// A choice is often drawn by its label, with the box itself out of sight.
const choice = ['radio', 'checkbox'].includes(element.type);
const target = (choice && element.labels[0]) || element;
// A person scrolls until it is in the open. The driver is content with a place under a sticky bar.
target.scrollIntoView({ block: 'center', behavior: 'instant' });
return { target };
