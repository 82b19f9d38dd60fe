const UNITS =
  'V|kV|A|kA|Hz|W|kW|in|ft|m|cm|mm|mm2|lb-in|lb-ft|N\\u00b7m|N m|Nm|AWG|kcmil|kcmils|%|°C|minutes?|minutos?';
const FIGURE = new RegExp(`([\\d.]) (?=(?:${UNITS})(?![\\p{L}\\d]))`, 'gu');
const NEWTON_METRES = /N m(?![\p{L}])/gu;
const AFTER_UNIT = /(\u00a0(?:V|AWG|mm2)) (?=(?:AC|DC|CA|CC|Cu|Al)(?![\p{L}\d]))/gu;

/**
 * Text in which no line break parts a figure from its unit, nor the unit from its kind (`264 V AC`, `10 AWG Cu`): a blank that doesn't
 * break stands between them.
 */
export function unparted(text: string): string {
  return text.replace(FIGURE, '$1\u00a0').replace(NEWTON_METRES, 'N\u00a0m').replace(AFTER_UNIT, '$1\u00a0');
}
