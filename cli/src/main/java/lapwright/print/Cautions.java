package lapwright.print;

/** What papers say because the work can hurt someone. */
final class Cautions {
  static final String DESIGN =
      "Sections, lengths, joints and laps are as the engineered drawings say; local code and"
          + " licensed practice decide. Lapwright only plans buying and cutting.";

  static final String RUNS =
      "Laps, gaps and joints are those that the job asks for; structural members are spliced and"
          + " lapped only as the engineered drawings say.";

  /** Common practice of metal shops, no source. */
  static final String CUTTING =
      "Wear eye, ear and hand protection. Clamp before you cut. Burning or welding galvanized steel"
          + " gives off zinc fume: ventilate. Never cut coated sheet with an abrasive blade.";

  private Cautions() {}
}
