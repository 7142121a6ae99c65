package lapwright.files.lists;

import java.util.List;

/** What a column of a list tells, and what people call it. */
enum Role {
  MATERIAL("material", "section", "profile", "shape", "stock", "steel"),
  LENGTH("length", "len", "lgth", "long", "cut length", "cut len", "finished length"),
  FEET("feet", "ft"),
  INCHES("inches", "inch", "in"),
  UNIT("unit", "units", "uom"),
  QTY("qty", "quantity", "count", "pcs", "pieces", "no of", "no of pcs", "nos", "ea", "how many"),
  MARK("mark", "id", "piece", "piece mark", "part", "part no", "part number", "tag", "mk"),
  FOR("for", "use", "purpose", "description", "notes", "note", "remarks", "remark", "comment");

  private final String words;

  Role(String... words) {
    this.words = String.join("|", words);
  }

  List<String> words() {
    return List.of(words.split("\\|"));
  }

  /** The column of a job's table that it becomes. */
  String column() {
    return words().get(0);
  }
}
