/** Wheel, fingers and mouse on a drawing that can be moved and looked at more closely. */

export interface Gestures {
  /** Goes so many times closer about a place, CSS pixels from the drawing's left. */
  zoom(times: number, at: number): void;
  /** The drawing goes along with the hand, CSS pixels to the right. */
  drag(by: number): void;
  /** A place is pointed at. */
  point(at: number): void;
  /** False where all is in view: a hand on it then points. */
  canDrag(): boolean;
}

/** A notch of a wheel goes so many times closer. */
const NOTCH = 1.2;
/** Pixels of a notch; wheels that count in lines or pages have fewer, larger steps. */
const NOTCH_PIXELS = 100;
const LINE_PIXELS = 33;

/** Listens on an element, whose `touch-action` leaves sideways moves and pinches to it. */
export function listen(element: HTMLElement, on: Gestures): void {
  const hands = new Map<number, number>();
  const at = (event: MouseEvent) => event.clientX - element.getBoundingClientRect().left;
  element.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      const pixels = event.deltaY * (event.deltaMode === WheelEvent.DOM_DELTA_PIXEL ? 1 : LINE_PIXELS);
      if (event.deltaX !== 0 && Math.abs(event.deltaX) > Math.abs(event.deltaY)) on.drag(-event.deltaX);
      else on.zoom(NOTCH ** (-pixels / NOTCH_PIXELS), at(event));
    },
    { passive: false },
  );
  element.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    element.setPointerCapture(event.pointerId);
    hands.set(event.pointerId, at(event));
    on.point(at(event));
  });
  element.addEventListener('pointermove', (event) => {
    const now = at(event);
    const before = hands.get(event.pointerId);
    if (before === undefined) {
      if (event.pointerType !== 'touch') on.point(now);
      return;
    }
    const other = [...hands].find(([id]) => id !== event.pointerId)?.[1];
    hands.set(event.pointerId, now);
    if (other !== undefined) {
      const [was, is] = [Math.abs(before - other), Math.abs(now - other)];
      if (was > 0 && is > 0) on.zoom(is / was, (now + other) / 2);
      on.drag((now - before) / 2);
    } else if (on.canDrag()) on.drag(now - before);
    else on.point(now);
  });
  for (const end of ['pointerup', 'pointercancel'] as const) {
    element.addEventListener(end, (event) => hands.delete(event.pointerId));
  }
}
