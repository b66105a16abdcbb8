/** Height of a person where nobody says another, and in drawings, cm. Our own choice. */
export const USUAL_HEIGHT = 170;
