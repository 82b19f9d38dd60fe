import type { MeasuredSource, MeasureReasons } from '../../model/reasons/measure.js';
import { neededVolts } from '../figures.js';
import { tagList } from '../tag-list.js';
import type { CrewSayings } from './crew-note-words.js';
import { CREW_NOTES_ES } from './crew-notes-es.js';
import { ISOLATION_ES } from './crew-isolation-es.js';

const SAFE_WORK = { nec: 'NFPA 70E o reglas locales', iec: 'reglas locales de trabajos en tensión' };

const SOURCES: Readonly<Record<MeasuredSource, string>> = {
  sun: 'Campo fotovoltaico',
  turbine: 'Turbina',
  both: 'Campo fotovoltaico con turbina',
  battery: 'Batería',
  control: 'Circuito de control',
};
const ABOVE: Readonly<Record<MeasuredSource, string>> = {
  sun: 'más módulos en serie, otros módulos o un día más frío de lo que el plan sabe',
  turbine: 'más velocidad de la que el plan sabe, u otra turbina',
  both: 'más módulos en serie o más velocidad de lo que el plan sabe',
  battery: 'más celdas, o una carga más alta de lo que el plan sabe',
  control: 'otra fuente que la que el plan sabe',
};
const GROUNDED = {
  pole: 'Polo a tierra',
  neutral: 'N',
  phase: 'Fase a tierra',
  wire: 'Hilo a tierra de un circuito de control',
};

/** `a`, `a y b`, `a, b y c`. */
function list(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} y ${words.at(-1) ?? ''}`;
}

/** Tags as papers name them: `P-5 a P-30`. */
function spans(tags: readonly string[]): string {
  return tagList(tags).replaceAll(' to ', ' a ');
}

type Sources = MeasureReasons['measure-state/sources-on'];

function onText({ of, sources, here, needs }: Sources): string {
  const tags = spans(sources);
  const loaded = here.length === 0 ? '' : `, con ${list([...here, ...needs])}`;
  switch (of) {
    case 'sun':
      return `Conectado: ${tags === '' ? 'el campo fotovoltaico' : tags}, con sol`;
    case 'turbine':
      return `Conectada: ${tags === '' ? 'la turbina' : tags}, girando con carga${loaded}`;
    case 'both':
      return `Conectados: ${tags === '' ? 'campo y turbina' : tags}, con sol y girando con carga${loaded}`;
    case 'control':
      return 'Conectada: la fuente de control';
    case 'ac':
    case 'battery':
      return `Conectado: ${tags === '' ? 'lo que alimenta este lugar' : tags}`;
  }
}

function sourcesOn(values: Sources): string {
  const { stops, loads, kept = [], off, more } = values;
  const left = [
    ...loads,
    ...kept,
    ...(more.loads ? ['todo otro convertidor que carga una turbina, con su batería o su fuente'] : []),
  ];
  const rest = [...off, ...(more.off ? ['todo otro convertidor'] : [])];
  return [
    ...(stops.length === 0 ? [] : [`Primero pare ${list(stops)}: hoja de aislamiento.`]),
    `${onText(values)}.`,
    ...(left.length === 0 ? [] : [`Sigue conectado por una turbina: ${spans(left)}.`]),
    ...(rest.length === 0 ? [] : [`Apagado: ${spans(rest)}.`]),
  ].join(' ');
}

function ratedFor({ volts, current }: Omit<MeasureReasons['meter/rated'], 'category' | 'beside'>): string {
  const kind = current === null ? '' : ` ${current === 'ac' ? 'CA' : 'CC'}`;
  return volts === null ? `lo más${kind} que haya, sin dato` : `${neededVolts(volts.value)} V${kind}`;
}

/** What wiring notes and the isolation page say by code, in Spanish. */
export const CREW_SAYINGS_ES: CrewSayings = {
  ...ISOLATION_ES,
  'measure-state/sources-on': sourcesOn,
  'measure-state/control': () => 'Conectada: la fuente de control.',
  'measure-state/do-not-open': ({ turbines }) =>
    `NO ABRA NI MIDA AQUÍ hasta conocer la tensión del fabricante de ${list(turbines)}.`,
  'ground-fault/lines': () =>
    'Una línea cerca de 0 V a tierra y las otras cerca de la tensión entre líneas: fallo a tierra, PARE.',
  'ground-fault/neutral': () => 'N a tierra cerca de la tensión de una línea a N: fallo a tierra, PARE.',
  'ground-fault/pair': ({ under, over }) =>
    `Un polo con menos del ${under} % y el otro con más del ${over} % de + a −: fallo a tierra, PARE; si los dos caen a cero, es el medidor.`,
  'reading-due/less-sun': () => 'Con menos sol, menos voltios: anótelos, mida otra vez a pleno sol.',
  'reading-due/open-box': () =>
    'Con menos sol, o con la caja de parada rápida abierta: anótelo, mida otra vez a pleno sol con la caja cerrada.',
  'reading-due/turbine-still': () => 'Parada: anótelo, mida otra vez mientras gira.',
  'meter/rated': ({ category, beside, ...own }) =>
    `Medidor ${category}, al menos ${list([own, ...(beside ?? [])].map(ratedFor))}.`,
  'clothing/settle-first': ({ practice }) =>
    `Antes decida la protección contra choque y arco (${SAFE_WORK[practice]}).`,
  'clothing/as-usual': ({ practice }) => `Con protección contra choque y arco (${SAFE_WORK[practice]}).`,
  'ground-lead/bonded-bar': () => 'la barra unida del equipo de acometida',
  'ground-lead/electrode-bar': () => 'la barra donde llega el conductor del electrodo de tierra',
  'ground-lead/equipment-ground-bar': () =>
    'la barra de tierra de equipos de aquí, no a la barra N ni a una pica propia',
  'ground-lead/equipment-ground-terminal': () =>
    'la barra o borne de tierra de equipos de aquí, no a una pica sin unir',
  'ground-lead/main-earthing-terminal': () => 'el borne principal de tierra o la barra PE, no a la barra N',
  'ground-lead/protective-earth-bar': () => 'la barra PE de aquí, no a la barra N ni a un electrodo propio',
  'ground-lead/protective-earth-terminal': () => 'la barra o borne PE de aquí, no a un electrodo sin unir',
  'position/ahead-of-main': () =>
    'Antes del interruptor principal, lo más cerca de la entrada; en el contador solo con permiso de la compañía.',
  'position/service': () => 'Después del interruptor principal, lo más cerca de la entrada.',
  'position/first-device': ({ ahead }) =>
    `${ahead ? 'Antes' : 'Después'} del primer aparato de protección, con las luces a la vista.`,
  'position/load': () => 'En el equipo, donde entra su alimentador.',
  'position/feeder': () => 'Lado de carga del alimentador, lo más cerca de su entrada.',
  'position/tower-base': () => 'Al pie de la torre, con las luces a la vista.',
  'position/cable-leaves': () => 'Donde sale el cable, con las luces a la vista.',
  'position/control-cable': () => 'Donde entra el cable de control.',
  'position/battery-bus': () => 'En la barra de la batería, después de su seccionador.',
  'position/terminals': () => 'En estos bornes, con las luces a la vista.',
  'wiring-note/current-not-known': () => 'No se sabe si aquí llega CA o CC: pregunte antes de conectar.',
  'wiring-note/stay-charged': ({ tags }) => `Bornes CC de ${spans(tags)} cargados: espere, compruebe.`,
  'wiring-note/thin-lead': ({ least }) => `Cable de tierra de al menos ${least.gauge}.`,
  'wiring-note/grounded-conductor': ({ conductor }) =>
    `${conductor === 'positive' ? 'Positivo' : conductor === 'negative' ? 'Negativo' : conductor}: color inseguro (a tierra: blanco o gris, sin fusible); siga la medida.`,
  'neutral/no-channel-left': () => 'De N a tierra no hay protección aquí.',
  'overcurrent-note/straight-through': ({ conductor }) =>
    `${conductor} pasa directo: sin fusible ni interruptor.`,
  'overcurrent-note/single-and-three-phase': () => 'El interruptor está marcado para una y tres fases.',
  'overcurrent-note/poles-in-words': ({ named, poles }) =>
    `El catálogo dice ${named === 1 ? '1 polo' : `${named} polos`}, aquí van ${poles}: pregunte al fabricante de la pieza.`,
  'overcurrent-note/one-for-each-port': ({ ports }) =>
    `Un aparato para cada una: ${list(ports.map(portInSpanish))}. Nunca dos hilos bajo un borne.`,
  'overcurrent-note/one-wire-a-terminal': ({ conductor }) =>
    `${conductor}: un cable sale del aparato y se reparte en un conector homologado; nunca dos hilos bajo un borne.`,
  'overcurrent-note/battery-gas': ({ batteries }) =>
    `GAS DE BATERÍA de ${spans(batteries)}: su aparato puede dar chispas. Móntelo solo donde el fabricante de la batería dice que no se junta gas; si no, pregunte.`,
  'reading-below/array': () =>
    'Campo fotovoltaico bajo: menos sol, una cadena abierta o con sombra, menos módulos, un módulo en corto.',
  'reading-below/battery': () =>
    'Batería baja: demasiado descargada, una celda mala, otra batería, su seccionador abierto.',
  'reading-below/utility': () => 'Línea baja: línea o N abierta, otra toma u otro sistema, línea muy larga.',
  'reading-below/own-source': () =>
    'Línea baja con inversor o generador: sobrecargado, lento, línea o N abierta, otro sistema.',
  'reading-above/grounded': ({ what }) =>
    `${GROUNDED[what]} con más de sus valores: perdió su tierra, o hay conductores cambiados.`,
  'reading-above/supply': () => 'Línea alta: N abierta, otra toma u otro sistema, conductores cambiados.',
  'reading-above/source': ({ of }) => `${SOURCES[of]} con más de sus valores: ${ABOVE[of]}.`,
  'reading-below/utility-delta': () =>
    'Línea baja: línea abierta, otra toma u otro sistema, línea muy larga.',
  'reading-below/own-source-delta': () =>
    'Línea baja con inversor o generador: sobrecargado, lento, línea abierta, otro sistema.',
  'reading-above/supply-delta': () => 'Línea alta: otra toma u otro sistema, conductores cambiados.',
  'reading-above/converter-bears': ({ tag }) => `Alto en ${tag}: más de lo que ${tag} aguanta.`,
};

function portInSpanish(port: string): string {
  const input = /^dc-in-(\d+)$/.exec(port)?.[1];
  const ports: Readonly<Record<string, string>> = CREW_NOTES_ES.ports;
  return input === undefined ? (ports[port] ?? port) : `${CREW_NOTES_ES.ports['dc-input']} ${input}`;
}
