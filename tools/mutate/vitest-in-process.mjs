/**
 * `describe`, `test` and `it` for a run inside one process: they only write down what there is to run. What the clinical core's
 * tests use of vitest is here and nothing else; `expect` is vitest's own.
 */
export { expect } from 'vitest/real';

/** Every test written down since this was last emptied, with its full name. */
export const written = [];
let writing = written;
let names = [];

const filled = (title, values) => {
  if (values.length === 1 && typeof values[0] === 'object' && values[0] !== null && !Array.isArray(values[0]))
    return title.replaceAll(/\$(\w+)/g, (_, key) => String(values[0][key]));
  let next = 0;
  return title.replaceAll(/%[sidfjo]/g, () => String(values[next++]));
};

/**
 * What a group prepares for its tests is prepared anew for each of them: prepared once, while the file is loaded, it would have
 * been computed without the change that is tried.
 */
const within = (name, body) => {
  if (names.length > 0) {
    names.push(name);
    body();
    names.pop();
    return;
  }
  const prepared = () => {
    const tests = (writing = []);
    names = [name];
    try {
      body();
    } finally {
      writing = written;
      names = [];
    }
    return tests;
  };
  for (const [index, test] of prepared().entries())
    written.push({ name: test.name, body: () => prepared()[index].body() });
};
const write = (name, body) => writing.push({ name: [...names, name].join(' > '), body });

/** Rows of a table: a list is spread over the arguments, anything else is the one argument. */
const each = (one) => (rows) => (title, body) => {
  rows.forEach((row, index) => {
    const values = Array.isArray(row) ? row : [row];
    one(`${filled(title, values)} [${index}]`, () => body(...values));
  });
};

export const describe = Object.assign(within, { each: each(within) });
const one = Object.assign(write, { each: each(write) });
export { one as it, one as test };
