/** A picture that stands for a panel where panels are picked, beside its name. */
export interface SmallPhoto {
  src: string;
  width: number;
  height: number;
}
