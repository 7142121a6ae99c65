package lapwright.files;

import java.util.List;
import java.util.Objects;
import lapwright.files.source.Fault;

/** What came of reading an order folder. */
public sealed interface FolderReading {
  /** The input is sound. */
  record Sound(OrderInput input) implements FolderReading {
    public Sound {
      Objects.requireNonNull(input);
    }
  }

  /** Something is wrong; all of it, by file and line. */
  record Faulty(List<Fault> faults) implements FolderReading {
    public Faulty {
      faults = List.copyOf(faults);
      if (faults.isEmpty()) {
        throw new IllegalArgumentException("nothing is wrong");
      }
    }
  }
}
