/** A photo of a meal: already scaled and without location data when it comes here. */
export interface Photo {
  readonly id: string;
  /** Such as "image/jpeg". */
  readonly mime: string;
  readonly bytes: Uint8Array;
  readonly widthPx?: number | undefined;
  readonly heightPx?: number | undefined;
  /** ISO 8601 instant. */
  readonly addedAt: string;
}
