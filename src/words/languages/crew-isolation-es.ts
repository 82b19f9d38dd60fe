import type { IsolateReasons } from '../../model/reasons/isolate.js';
import type { Sayings } from '../reasons/sayings.js';

/** `a`, `a y b`, `a, b y c`. */
function list(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} y ${words.at(-1) ?? ''}`;
}

/** Lists seldom have a disconnect of their own for an array, a turbine or a battery. */
const NONE_THERE = 'si no lo hay: pare y pregunte a la oficina';
const ELECTRODES = {
  circuit: 'la unión al electrodo del equipo, si lo tiene',
  tower: 'la unión al electrodo de la torre',
  frame: 'la unión al electrodo del marco, si lo tiene',
  casing: 'la unión al electrodo del tubo de la bomba, si lo tiene',
};
const CONDUCTOR = {
  nec: 'el conductor de tierra de equipos del cable',
  iec: 'el conductor de protección del cable',
};
const atEnd = (tags: readonly string[]): string => `en su otro extremo, ${list(tags)}`;

/** How a site is made dead and live again, in Spanish. */
export const ISOLATION_ES: Sayings<IsolateReasons> = {
  'isolate/block-generator': () => 'Impida el arranque automático del generador, y póngale candado',
  'isolate/block-inverter': () =>
    'Impida el arranque y la transferencia automáticos del inversor cargador, y póngale candado',
  'isolate/block-ac-battery': () => 'Impida el arranque automático de la batería CA, y póngale candado',
  'isolate/control-supply': () => 'Apague la fuente del circuito de control, y póngale candado',
  'isolate/control-supply-at': ({ at }) =>
    `Apague la fuente del circuito de control ${atEnd(at)}, y póngale candado`,
  'isolate/stop-wind': () =>
    'Pare la turbina eólica con su carga aún conectada, con su freno o su cortocircuito, como dice el fabricante; deje el cortocircuito puesto, con candado',
  'isolate/stop-hydro': () =>
    'Pare la turbina hidráulica con su carga aún conectada, cerrando su agua; ponga candado a la válvula',
  'isolate/keep-diversion': () => 'Deje conectada la carga de desvío hasta que toda turbina esté parada',
  'isolate/loads-off': () => 'Apague la carga',
  'isolate/inverters-off': () => 'Apague el inversor',
  'isolate/controllers-off': () =>
    'Apague el regulador de carga como dice el fabricante; si no tiene interruptor: anótelo, y siga',
  'isolate/ac-modules-off': () => 'Apague el ramal de módulos CA en su interruptor',
  'isolate/drives-off': () => 'Pare el variador de la bomba antes de abrir nada detrás de él, y apáguelo',
  'isolate/ac-batteries-off': () => 'Apague la batería CA',
  'isolate/open-generator': () => 'Pare el generador, y abra su interruptor',
  'isolate/open-utility': () => 'Abra el seccionador principal de la red pública',
  'isolate/utility-off': () =>
    'Para trabajar antes del seccionador principal: la compañía deja la acometida sin tensión, y usted lo comprueba; hasta entonces no conecte allí',
  'isolate/open-array': () =>
    `Abra el seccionador de corte en carga del campo fotovoltaico; nunca un portafusibles ni un conector en carga; ${NONE_THERE}`,
  'isolate/open-turbine': () =>
    `Abra el seccionador de la turbina, del lado de carga de su cortocircuito; ${NONE_THERE}`,
  'isolate/open-battery': () => `Abra el seccionador de la batería; ${NONE_THERE}`,
  'isolate/wait': ({ minutes }) =>
    `Espere lo que dicen los fabricantes; si no dicen nada, ${minutes} ${minutes === 1 ? 'minuto' : 'minutos'}`,
  'isolate/lock': () => 'Bloquee y etiquete todo aparato que se abrió, y anótelo',
  'isolate/prove-dead': () =>
    'Compruebe la ausencia de tensión: el comprobador en una fuente conocida, luego cada conductor a tierra y entre sí, luego otra vez la fuente conocida',
  'restore/unlock': ({ stay }) =>
    `Quite candados y etiquetas cuando nadie esté en los equipos, cada uno quien lo puso${stay.length === 0 ? '' : `; los de ${stay.length === 1 ? 'el paso' : 'los pasos'} ${list(stay.map(String))}, cuando toque ese paso`}`,
  'restore/battery': () => 'Cierre el seccionador de la batería',
  'restore/turbine': () => 'Cierre el seccionador de la turbina; su cortocircuito sigue puesto',
  'restore/array': () => 'Cierre el seccionador del campo fotovoltaico',
  'restore/utility': () => 'Cierre el seccionador principal de la red pública',
  'restore/utility-on': () =>
    'Tras trabajar antes del seccionador principal: la compañía vuelve a dar tensión, con el seccionador principal aún abierto',
  'restore/generator': () => 'Cierre el interruptor del generador',
  'restore/loads': () => 'Encienda la carga',
  'restore/inverters': () => 'Encienda el inversor',
  'restore/controllers': () => 'Encienda el regulador de carga como dice el fabricante',
  'restore/ac-modules': () => 'Cierre el interruptor del ramal de módulos CA',
  'restore/drives': () => 'Encienda el variador de la bomba, con todo cerrado detrás de él',
  'restore/ac-batteries': () => 'Encienda la batería CA',
  'restore/release-wind': () =>
    'Suelte la turbina eólica con toda su carga conectada, también la de desvío: quite su cortocircuito o su freno',
  'restore/release-hydro': () =>
    'Dé agua a la turbina hidráulica con toda su carga conectada, también la de desvío',
  'restore/automatic-starts': () => 'Permita el arranque automático, lo último de todo',
  'restore/control-supply': () => 'Encienda la fuente del circuito de control',
  'restore/control-supply-at': ({ at }) => `Encienda la fuente del circuito de control ${atEnd(at)}`,
  'live/ahead-of-main': () => 'todo este lugar: está antes del seccionador principal',
  'live/line-side-of-service': () => 'el lado de entrada de la acometida, antes del seccionador principal',
  'live/battery-terminals': () => 'los bornes de la batería, hasta su primer aparato',
  'live/array-side': () => 'de día, todo desde los módulos hasta el seccionador abierto',
  'live/array-conductors': () => 'de día, los conductores de aquí, hasta el seccionador abierto',
  'live/turbine-side': () => 'siempre que gire la turbina, todo entre ella y su seccionador abierto',
  'live/turbine-conductors': () => 'los conductores de la turbina aquí, siempre que gire',
  'live-who/utility-first': () =>
    'la compañía deja la acometida sin tensión y la cuadrilla lo comprueba; hasta entonces no conecte',
  'live-who/utility': () => 'solo la compañía puede quitarle la tensión',
  'live-who/nobody-battery': () => 'nadie puede quitársela: cúbralos, use herramientas aisladas',
  'live-who/nobody-array': () => 'ningún seccionador la quita: cubra los módulos, o trabaje a oscuras',
  'live-who/locked-rotor': () => 'solo su cortocircuito o freno con candado la detiene',
  'live-who/shut-water': () => 'solo su agua cerrada y con candado la detiene',
  'ground-terminal/fit': () => '¿Aquí no hay barra de tierra? Ponga un borne de tierra',
  'ground-terminal/lead': () => 'el cable de tierra',
  'ground-terminal/electrode': ({ of }) => ELECTRODES[of],
  'ground-terminal/conductor': ({ practice }) => CONDUCTOR[practice],
  'ground-terminal/never': () => 'Nunca un electrodo solo',
  'ground-terminal/ask': () => 'Si el cable no trae ese conductor: pare, pregunte',
};
