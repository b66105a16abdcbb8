import { countedLeds } from '../../content/read/counted-leds.ts';
import { filesOf } from '../../content/read/files/file-kind.ts';
import { assumedEmitter, countedEmitter } from '../../measure/beam/assumed-emitter.ts';
import { type Flag, isFigure } from '../../measure/figure.ts';
import { METRICS } from '../../measure/metrics.ts';
import type { DotPattern, Pitch } from '../../measure/wall/dot-pattern.ts';
import type { Cells, Evenness } from '../../measure/wall/evenness.ts';
import type { LightOfWall, WallLight } from '../../measure/wall/straighten.ts';
import { CLIPPED_MOST, CLIPPED_ODD, wallFigures } from '../../measure/wall/wall-figures.ts';
import { signalOf, WALL_SIGNALS, type WallSignal, wallErrors, wallReading } from '../../measure/wall/wall-results.ts';
import type { FileContext, FileMaker } from './file-maker.ts';

declare module './file-maker.ts' {
  interface FileViews {
    wallPhoto: WallPhotoView;
  }
}

declare module '../../measure/statement.ts' {
  interface StatementData {
    /** Share of the wall at the end of the camera's scale, %; figures are withheld with too much of it. */
    'wall-photo-overexposed': { percent: number; isWithheld: boolean };
    'expose-less': object;
  }
}

/** How even one signal is. */
export interface SignalEvenness {
  signal: WallSignal;
  evenness: Evenness;
}

/** What pages tell of a photo of the wall. */
export interface WallPhotoView {
  name: string;
  light: LightOfWall;
  /** From the panel to the wall, cm. */
  distance: number;
  cells: Cells | undefined;
  dots: DotPattern | undefined;
  pitch: Pitch | undefined;
  /** Luminance first, then each channel that has light. */
  signals: SignalEvenness[];
}

/** Figures of the photo of the lit wall. */
export const wallPhotoMaker: FileMaker<'wallPhoto'> = {
  block: 'wallPhoto',
  make(files, context) {
    const [file] = filesOf(files, 'wallPhoto');
    if (!file) throw new RangeError('no photo of the wall');
    const pitch = pitchOf(context);
    const { light, reading, errors, signals } = context.findIn([file], ['evenness', pitch ?? null], () =>
      found(file.data().light, pitch),
    );
    return {
      figures: wallFigures({ session: context.id, light, reading, errors, hasPitch: pitch !== undefined }),
      view: {
        name: file.name,
        light,
        distance: file.entry.distance?.value ?? context.distance.distance,
        cells: reading?.cells,
        dots: reading?.dots,
        ...{ pitch, signals },
      },
      flags: () => flagsOf(light),
    };
  },
};

function found(light: WallLight, pitch: Pitch | undefined) {
  const reading = wallReading(light, signalOf(light, 'luminance'), pitch);
  const signals = WALL_SIGNALS.flatMap((signal): SignalEvenness[] => {
    const own = signal === 'luminance' ? reading : wallReading(light, signalOf(light, signal), undefined);
    return own ? [{ signal, evenness: own.evenness }] : [];
  });
  const { red: _red, green: _green, blue: _blue, ...told } = light;
  return { light: told satisfies LightOfWall, reading, errors: reading && wallErrors(light, reading), signals };
}

/** How the LEDs repeat: as they were counted, or else as the claimed number lies in the field. */
function pitchOf({ panel, field }: FileContext): Pitch | undefined {
  if (!isFigure(field.width) || !isFigure(field.height)) return undefined;
  const size = { width: field.width.value, height: field.height.value };
  const { emitter } = panel.leds
    ? countedEmitter(size, countedLeds(panel.leds))
    : assumedEmitter(size, panel.claims?.ledCount);
  if (emitter.kind !== 'leds' || emitter.columns < 2 || emitter.rows < 2) return undefined;
  return {
    across: (size.width - emitter.ledSize) / (emitter.columns - 1),
    down: (size.height - emitter.ledSize) / (emitter.rows - 1),
    staggered: emitter.staggered ?? false,
  };
}

function flagsOf({ clipped }: LightOfWall): Flag[] {
  if (clipped <= CLIPPED_ODD) return [];
  return [
    {
      check: 'wall-photo-exposure',
      severity: 'doubt',
      finding: { code: 'wall-photo-overexposed', percent: 100 * clipped, isWithheld: clipped > CLIPPED_MOST },
      hint: { code: 'expose-less' },
      concerns: METRICS.filter(({ method }) => method === 'wall-photo').map(({ id }) => id),
      at: ['session', 'wallPhoto', 'file'],
    },
  ];
}
