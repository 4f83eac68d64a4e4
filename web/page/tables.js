// Items that are tables: a column sum, laid out so that it can be checked by eye, and a plain table.
import { make, say, set, with_units } from './dom.js';
import { drawn_from } from './figure.js';

/// A row a term: the word with its reason under it, sign, figures, letter. A rule stands above each result.
export function sum() {
  const caption = make('caption', { class: 'visually-hidden' });
  const body = make('tbody');
  const element = make('table', { class: 'sum' }, caption, body);
  return {
    element,
    patch(item) {
      set(element, 'data-name', item.name);
      say(caption, item.caption);
      body.replaceChildren(...item.rows.map(sum_row));
    },
  };
}

function sum_row(row) {
  const word = make('th', { scope: 'row' }, make('bdi', {}, row.word));
  if (row.reason) word.append(make('small', {}, row.reason));
  if (row.figures && row.beside) word.append(make('small', {}, row.beside));
  const cells = row.figures
    ? [make('td', { class: 'sign' }, row.sign), make('td', { class: 'figures' }, row.figures), make('td', { class: 'letter' }, row.letter)]
    : [make('td', { class: 'missing', colspan: 3 }, row.beside)];
  return make('tr', { class: row.kind }, word, ...cells);
}

/// Where a row can be pressed its first cell is a button, and the whole row takes the press.
export function table(act) {
  const caption = make('caption');
  const head = make('tr');
  const body = make('tbody');
  const rows = make('table', {}, caption, make('thead', {}, head), body);
  const empty = make('p', { class: 'when-empty' });
  const element = make('div', { class: 'table', tabindex: '0', role: 'group' }, rows, empty);
  return {
    element,
    patch(item) {
      set(element, 'data-name', item.name);
      set(element, 'aria-label', item.caption);
      say(caption, item.caption);
      say(empty, item.when_empty);
      rows.hidden = item.rows.length === 0;
      empty.hidden = !rows.hidden;
      const figures = (i) => (item.columns[i]?.figures ? 'figures' : null);
      head.replaceChildren(...item.columns.map((column, i) => make('th', { scope: 'col', class: figures(i) }, column.label)));
      const press = (row) => act.press(item.row_presses[row], {});
      const first = (text, row) => {
        const picture = item.row_pictures[row] ? [make('span', { class: 'figure picture', 'aria-hidden': 'true' }, ...drawn_from(item.row_pictures[row]))] : [];
        if (!item.row_presses[row]) return make('bdi', {}, ...picture, text);
        return make('button', { type: 'button', class: 'row-button', 'data-name': `${item.name}/${row}` }, ...picture, make('bdi', {}, text));
      };
      body.replaceChildren(...item.rows.map((cells, row) => {
        const line = make('tr', { class: item.row_presses[row] ? 'pressable' : null },
          ...cells.map((text, i) => make('td', { class: figures(i) }, i === 0 ? first(text, row) : make('bdi', {}, with_units(text)))));
        if (item.row_presses[row]) line.addEventListener('click', () => press(row));
        return line;
      }));
    },
  };
}
