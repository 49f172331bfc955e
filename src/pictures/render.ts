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

/** The drawing as SVG. ECharts is loaded with the first picture only. */
export async function toSvg({ height, chart, marks }: Drawing, measure: Measure): Promise<string> {
  const { init } = await import('echarts/dist/echarts.esm.min.mjs');
  const canvas = init(null, null, { renderer: 'svg', ssr: true, width: WIDTH, height });
  try {
    const series = Array.isArray(chart.series) ? chart.series : [];
    canvas.setOption({
      ...chart,
      animation: false,
      backgroundColor: PALETTE.panel,
      textStyle: { fontFamily: FAMILY, fontSize: SIZE.text, color: PALETTE.ink },
      series: [...series, seriesOf(marks, measure)],
    });
    return canvas.renderToSVGString();
  } finally {
    canvas.dispose();
  }
}

/** The drawing as PNG bytes, with the fonts of `FONT_FILES` and no others. */
export async function toPng(svg: string): Promise<Uint8Array> {
  const { Resvg } = await import('@resvg/resvg-js');
  const image = new Resvg(svg, {
    font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES), defaultFontFamily: FAMILY },
  });
  return image.render().asPng();
}

/** One series that places all marks in pixels; it needs the chart's grid only to be painted with it. */
function seriesOf(marks: readonly Mark[], measure: Measure): CustomSeriesOption {
  return {
    type: 'custom',
    coordinateSystem: 'none',
    silent: true,
    z: 10,
    data: [0],
    renderItem: () => ({
      type: 'group',
      children: marks.flatMap<object>((mark) =>
        mark.kind === 'text' ? textElements(mark, measure) : [pathElement(mark)],
      ),
    }),
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
        text: run.text,
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
