import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TemplateDelegate } from 'handlebars';
import { templateFailure } from './template-failure.js';

/** The templates of one folder, compiled once. */
export interface Templates {
  /** Renders `templates/<name>/document.hbs`; of `<folder>/<name>`, `templates/<folder>/<name>.hbs`. */
  render(name: string, view: unknown): string;
  /** The text of `templates/styles/<name>.css`. */
  style(name: string): string;
}

/** The folder of the templates that shuntbook brings. */
export const SHIPPED_TEMPLATES = fileURLToPath(new URL('../../../templates', import.meta.url));
const loaded = new Map<string, Promise<Templates>>();

/**
 * Reads a file of the templates: from the overriding folder where it has one of that relative path, else the shipped one.
 */
function source(folder: string | undefined, relative: string): string {
  const own = folder === undefined ? undefined : path.join(folder, relative);
  const file = own !== undefined && existsSync(own) ? own : path.join(SHIPPED_TEMPLATES, relative);
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw templateFailure(relative, error);
  }
}

/**
 * The text of a template that the program brings.
 * @param relative its path below the folder of templates
 * @throws Failure where it can't be read
 */
export function shippedTemplate(relative: string): string {
  return source(undefined, relative);
}

/** Folders whose templates stand in others: `partials/head.hbs` as `head`, `closeout-pack/note.hbs` as `closeout-pack/note`. */
const PIECES: readonly (readonly [folder: string, prefix: string])[] = [
  ['partials', ''],
  ['closeout-pack', 'closeout-pack/'],
];

/** The pieces that templates are made of, by name, each with its path. */
function partialNames(folder: string | undefined): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const top of [SHIPPED_TEMPLATES, ...(folder === undefined ? [] : [folder])]) {
    for (const [within, prefix] of PIECES) {
      const all = path.join(top, within);
      const files = existsSync(all) ? readdirSync(all).sort() : [];
      for (const file of files.filter((name) => name.endsWith('.hbs') && name !== 'document.hbs'))
        found.set(`${prefix}${file.slice(0, -'.hbs'.length)}`, `${within}/${file}`);
    }
  }
  return found;
}

async function load(folder: string | undefined): Promise<Templates> {
  const { default: Handlebars } = await import('handlebars');
  const engine = Handlebars.create();
  // Every value is HTML-escaped; only `if`, `each`, `unless` and `with` exist, so that no name of a list can call a helper.
  const options = { strict: true, knownHelpersOnly: true, preventIndent: true };
  const compile = (relative: string): TemplateDelegate => {
    const text = source(folder, relative);
    try {
      // Parsed here, so that a fault of syntax names its own file; compiled at its first use.
      return engine.compile(engine.parse(text), options);
    } catch (error) {
      throw templateFailure(relative, error);
    }
  };
  for (const [name, relative] of partialNames(folder)) engine.registerPartial(name, compile(relative));
  const compiled = new Map<string, TemplateDelegate>();
  const styles = new Map<string, string>();
  return {
    render(name, view) {
      const relative = name.includes('/') ? `${name}.hbs` : `${name}/document.hbs`;
      const template = compiled.get(name) ?? compile(relative);
      compiled.set(name, template);
      try {
        return template(view);
      } catch (error) {
        throw templateFailure(relative, error);
      }
    },
    style(name) {
      const text = styles.get(name) ?? source(folder, `styles/${name}.css`);
      styles.set(name, text);
      return text;
    },
  };
}

/**
 * The templates, read and compiled at the first call and kept for the process.
 * @param folder overrides any template, partial or style by its relative path
 * @throws Failure where a file can't be read or compiled
 */
export async function loadTemplates(folder?: string): Promise<Templates> {
  const key = folder === undefined ? '' : path.resolve(folder);
  const known = loaded.get(key) ?? load(folder);
  loaded.set(key, known);
  return known;
}
