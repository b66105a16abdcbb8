/** Places for the names of a plot's points, so that none lies on another name or on a point. No DOM. */

/** A point with the room that its name takes, px. */
export interface NamedPoint {
  x: number;
  y: number;
  width: number;
}

/** Left end and middle of a name. */
export interface NamePlace {
  x: number;
  y: number;
}

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const HEIGHT = 14;
/** From a point's middle to its name, and the room that a point takes itself. */
const GAP = 9;
const REACH = 7;

/**
 * A place for each name, beside its point or above or below it: the first that is free; undefined where none is, and the
 * point has to be asked for its name.
 *
 * @param area within which names have to lie
 */
export function placeNames(points: readonly NamedPoint[], area: Box): Array<NamePlace | undefined> {
  const taken: Box[] = points.map(({ x, y }) => ({
    left: x - REACH,
    right: x + REACH,
    top: y - REACH,
    bottom: y + REACH,
  }));
  return points.map(({ x, y, width }) => {
    const places: NamePlace[] = [
      { x: x + GAP, y },
      { x: x - GAP - width, y },
      { x: x - width / 2, y: y - GAP - HEIGHT / 2 },
      { x: x - width / 2, y: y + GAP + HEIGHT / 2 },
    ];
    for (const place of places) {
      const box = { left: place.x, right: place.x + width, top: place.y - HEIGHT / 2, bottom: place.y + HEIGHT / 2 };
      const isWithin =
        box.left >= area.left && box.right <= area.right && box.top >= area.top && box.bottom <= area.bottom;
      if (!isWithin || taken.some((other) => overlap(box, other))) continue;
      taken.push(box);
      return place;
    }
    return undefined;
  });
}

const overlap = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
