// The page's colours as CSS, from the one table that the canvas uses too (shell/palettes.inc): a custom property a role for
// each palette, and the classes by which figures name their inks.

const palettes = ['day', 'dusk', 'night', 'high-contrast'];
const dark = ['dusk', 'night'];
const row = /^INK\((\w+),\s*"(#\w{6})",\s*"(#\w{6})",\s*"(#\w{6})",\s*"(#\w{6})"\)$/;

/// [[role, [day, dusk, night, high contrast]]...]
export function inks_of(table) {
  const lines = table.split('\n').filter((line) => line.startsWith('INK('));
  return lines.map((line) => {
    const found = row.exec(line.trim());
    if (!found) throw new Error(`no row of colours: ${line}`);
    const [, role, ...colours] = found;
    return [role.replaceAll('_', '-'), colours];
  });
}

/// {role: the first step of the dimmer at which it is gone}
export function gone_of(table) {
  return Object.fromEntries([...table.matchAll(/^GONE\((\w+),\s*(\d)\)$/gm)].map(([, role, step]) => [role.replaceAll('_', '-'), Number(step)]));
}

/// {palette: its colour of that role}
export function colours_of(table, role) {
  const [, values] = inks_of(table).find(([name]) => name === role);
  return Object.fromEntries(palettes.map((palette, i) => [palette, values[i]]));
}

// Outlines of controls and the words that a panel can't do without have these colours too: only figures lose them, and of
// soft words what the style sheet gives the opacity --shows-soft.
const in_panels = { graticule: '', soft: '--shows-soft: 0' };

/// The page's part of the dimmer, which paper knows nothing of. data-dim lists the steps so far.
function dimmer_css(table) {
  const inks = new Set(inks_of(table).map(([role]) => role));
  const steps = Object.entries(gone_of(table)).filter(([role]) => inks.has(role)).map(([role, step]) => {
    const here = `[data-dim~="${step}"]`;
    const colour = in_panels[role] ?? `--${role}: transparent`;
    return `${colour && `${here} { ${colour}; }\n`}${here} .figure .fill-${role} { fill: none; }\n${here} .figure .stroke-${role} { stroke: none; }\n`;
  });
  return `@media not print {\n${steps.join('')}}\n`;
}

export function palette_css(table) {
  const inks = inks_of(table);
  const blocks = palettes.map((palette, i) => {
    const colours = inks.map(([role, values]) => `  --${role}: ${values[i]};`);
    const selector = i === 0 ? ':root' : `[data-palette="${palette}"]`;
    return `${selector} {\n  color-scheme: ${dark.includes(palette) ? 'dark' : 'light'};\n${colours.join('\n')}\n}\n`;
  });
  const classes = inks.map(([role]) => `.figure .fill-${role} { fill: var(--${role}); }\n.figure .stroke-${role} { stroke: var(--${role}); }\n`);
  return blocks.join('') + classes.join('') + dimmer_css(table);
}
