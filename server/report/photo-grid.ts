import { NO_PICTURE } from '../../src/phrases/photos.ts';
import type { ReportPhoto } from '../../src/report/report.ts';
import type { Piece } from './flow.ts';
import { SIZE } from './measure.ts';
import type { Pen } from './pen.ts';
import { heightOf, type Setting, set } from './setting.ts';

const ACROSS = 2;
const GAP = 12;
const BELOW = 4;
/** No photo is higher on paper, points: two rows of upright ones still stand on one sheet. */
const HIGHEST = 270;

/** Photos two in a row, each with its words under it. A picture that is not at hand leaves a frame that says so. */
export function photoGrid(setting: Setting, photos: readonly ReportPhoto[]): Piece[] {
  const width = (setting.width - GAP * (ACROSS - 1)) / ACROSS;
  const rows = Array.from({ length: Math.ceil(photos.length / ACROSS) }, (_, row) =>
    photos.slice(row * ACROSS, (row + 1) * ACROSS),
  );
  return rows.map((row): Piece => {
    const laid = row.map((photo, at) => photoIn(setting, photo, setting.x + at * (width + GAP), width));
    return {
      height: Math.max(...laid.map(({ height }) => height)),
      draw: (pen, y) => {
        for (const each of laid) each.draw(pen, y);
      },
    };
  });
}

function photoIn(setting: Setting, photo: ReportPhoto, x: number, room: number): Piece {
  const scale = Math.min(room / photo.width, HIGHEST / photo.height);
  const width = photo.width * scale;
  const height = photo.height * scale;
  const caption = set(setting, photo.caption, x, room, SIZE.small);
  return {
    height: height + BELOW + heightOf(caption) + GAP,
    draw: (pen, y) => {
      const picture = setting.pictureOf(photo);
      if (picture) {
        pen.open({ type: 'Figure', alt: photo.alt, bbox: [x, y, x + width, y + height] });
        pen.content(() => pen.doc.image(Buffer.from(picture), x, y, { width, height }));
        pen.close();
      } else {
        pen.artifact(() => frame(pen, x, y, width, height));
        pen.element({ type: 'P' }, set(setting, NO_PICTURE, x + BELOW, width - 2 * BELOW), y + BELOW);
      }
      pen.element({ type: 'P' }, caption, y + height + BELOW);
    },
  };
}

const frame = ({ doc }: Pen, x: number, y: number, width: number, height: number): unknown =>
  doc.undash().lineWidth(0.5).rect(x, y, width, height).stroke('black');
