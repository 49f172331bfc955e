import type { CustomSeriesOption, EChartsOption } from 'echarts';
import { FAMILY, FONT_FILES } from './fonts.ts';
import type { Label, Mark, Stroke } from './marks.ts';
import type { Measure } from './measure.ts';
import { PALETTE } from './palette.ts';
import { SIZE, WIDTH } from './picture.ts';

/** A chart ready to be drawn; the series and axes of `chart` first, the marks on top, in order. */
export interface Drawing {
  readonly height: number;
  readonly chart: EChartsOption;
  readonly marks: readonly Mark[];
}

/** All of a drawing as one ECharts option. */
export function optionOf({ chart, marks }: Drawing, measure: Measure): EChartsOption {
  const series = Array.isArray(chart.series) ? chart.series : [];
  return {
    ...chart,
    animation: false,
    backgroundColor: PALETTE.panel,
    textStyle: { fontFamily: FAMILY, fontSize: SIZE.text, color: PALETTE.ink },
    series: [...series, seriesOf(marks, measure)],
  };
}

/** An option as SVG, `WIDTH` pixels wide. ECharts is loaded with the first picture only. */
export async function toSvg(option: EChartsOption, height: number): Promise<string> {
  const { init } = await import('echarts/dist/echarts.esm.min.mjs');
  const canvas = init(null, null, { renderer: 'svg', ssr: true, width: WIDTH, height });
  try {
    canvas.setOption(option);
    return canvas.renderToSVGString();
  } finally {
    canvas.dispose();
  }
}

/** SVG as PNG bytes, with the fonts of `FONT_FILES` and no others. Most of the work is off the main thread. */
export async function toPng(svg: string): Promise<Uint8Array> {
  const { renderAsync } = await import('@resvg/resvg-js');
  const image = await renderAsync(svg, {
    font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES), defaultFontFamily: FAMILY },
  });
  return image.asPng();
}

/** The drawing as PNG bytes. */
export async function paint(drawing: Drawing, measure: Measure): Promise<Uint8Array> {
  return toPng(await toSvg(optionOf(drawing, measure), drawing.height));
}

/** One series that places all marks in pixels; it needs the chart's grid only to be painted with it. */
function seriesOf(marks: readonly Mark[], measure: Measure): CustomSeriesOption {
  const children = marks.flatMap<object>((mark) =>
    mark.kind === 'text' ? textElements(mark, measure) : [pathElement(mark)],
  );
  return {
    type: 'custom',
    coordinateSystem: 'none',
    silent: true,
    z: 10,
    data: [0],
    renderItem: () => ({ type: 'group', children }),
  } as CustomSeriesOption;
}

/**
 * A label as one element for each font in it: left to itself, the renderer sets a whole line in the fallback
 * font as soon as one sign needs it.
 */
function textElements({ text, x, y, size, ink, anchor = 'start', bold, halo }: Label, measure: Measure) {
  const runs = measure.runs(text);
  const isWhole = runs.length === 1;
  const width = isWhole ? 0 : measure.width(text, size, bold);
  let at = isWhole || anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width;
  return runs.map((run): object => {
    const left = at;
    if (!isWhole) at += measure.width(run.text, size, bold);
    return {
      type: 'text',
      x: left,
      y,
      style: {
        text: keySafe(run.text),
        fontFamily: run.family,
        fontSize: size,
        fontWeight: bold ? 700 : 400,
        align: !isWhole || anchor === 'start' ? 'left' : anchor === 'middle' ? 'center' : 'right',
        verticalAlign: 'middle',
        fill: PALETTE[ink],
        ...(halo ? { stroke: PALETTE.panel, lineWidth: 8 } : {}),
      },
    };
  });
}

/**
 * ECharts keeps the width of a text in a plain object under that text, so a tree called `__proto__` would
 * write into the prototype of every object there is (zrender 6.1.0, `LRU`). A space that is not seen makes
 * such names other texts.
 */
function keySafe(text: string): string {
  return text in Object.prototype ? `${text}\u00a0` : text;
}

function pathElement({ d, ink, width = 2, dash, fill }: Stroke) {
  return {
    type: 'path',
    shape: { pathData: d },
    style: {
      fill: fill ? PALETTE[fill] : 'none',
      stroke: ink ? PALETTE[ink] : 'none',
      lineWidth: ink ? width : 0,
      lineDash: dash ? [...dash] : 'solid',
    },
  };
}
