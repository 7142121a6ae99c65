package lapwright.files.source;

import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/** Gathers what is found while files are read. Not thread-safe. */
public final class Findings {
  private final SortedSet<Fault> faults = new TreeSet<>(Fault.BY_PLACE);
  private final SortedSet<Note> notes = new TreeSet<>(Note.BY_KIND);

  public void fault(Place place, String field, String value, String wrong, String remedy) {
    faults.add(new Fault(place, field, value, wrong, remedy));
  }

  public void fault(Fault fault) {
    faults.add(fault);
  }

  public void note(Note.Kind kind, Place place, String field, String text) {
    notes.add(new Note(kind, place, field, text));
  }

  public boolean isSound() {
    return faults.isEmpty();
  }

  /** All faults, by file and line. */
  public List<Fault> faults() {
    return List.copyOf(faults);
  }

  /** All notes, by kind, file and line. */
  public List<Note> notes() {
    return List.copyOf(notes);
  }
}
