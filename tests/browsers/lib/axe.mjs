// axe-core in any page: what it finds amiss by the rules of WCAG 2.0 to 2.2, A and AA, and by its own best practices.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/// Once a page, after it was opened.
export const bring_axe = (page) => page.evaluate(`() => { ${source}; return true; }`);

/// What points at nothing is added: axe leaves references from a label or a reason that is not there to the reader.
/// Each as "rule: element: what is wrong", none when all is well.
export const faults_of = (page) => page.evaluate(async () => {
  const { violations } = await window.axe.run(document, { resultTypes: ['violations'] });
  const dangling = ['aria-describedby', 'aria-labelledby'].flatMap((name) => [...document.querySelectorAll(`[${name}]`)]
    .flatMap((element) => element.getAttribute(name).split(/\s+/).filter((id) => !document.getElementById(id)).map((id) => `${name}: ${element.dataset.name}: no ${id}`)));
  return dangling.concat(violations.flatMap((violation) => violation.nodes.map((node) => `${violation.id}: ${node.target.join(' ')}: ${node.failureSummary.replace(/\s+/g, ' ')}`)));
});
