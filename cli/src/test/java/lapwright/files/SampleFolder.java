package lapwright.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import lapwright.files.jobs.JobChoice;
import lapwright.files.source.Fault;

/** A sound order folder in memory, to be changed by tests and written out. */
public final class SampleFolder {
  private final SortedMap<String, String> files = new TreeMap<>();

  public static SampleFolder sound() {
    SampleFolder sample = new SampleFolder();
    sample.put(
        "shop.yaml",
        """
        name: Reedham Shelters
        currency: USD
        units: ft-in
        saws:
          cold-saw: { kerf: 3/32", end-trim: 1/2", hold: 3", shortest-cut: 4", longest-stick: 24' }
          snips: { kerf: 0 }
        keep-offcuts-from: 24"
        """);
    sample.put(
        "materials.yaml",
        """
        materials:
          tube-2x2-14ga:
            name: Square tube 2 x 2, 14 ga
            saw: cold-saw
            weight: 2.25 lb/ft
            short-by: 1/4"
            stock: [20', 24']
          angle-2x2:
            saw: cold-saw
            mill-ends: good
            stock:
              - { length: 20', price: 21.50, per: each, supplier: marrowby, sold-in: 5, at-most: 40 }
          drip-trim-grey:
            saw: snips
            mill-ends: good
        """);
    sample.put(
        "suppliers.yaml",
        """
        suppliers:
          marrowby: { days: 2, order-by: "10:00", minimum: 300.00, freight: 85.00, longest: 24', rounds: line }
          tollgate: { days: 6, minimum: 250.00, freight: 60.00, free-from: 900.00 }
        """);
    sample.put(
        "prices/marrowby.csv",
        """
        material,length,price,per,sold-in,at-most,code,quoted,good-until
        tube-2x2-14ga,20',29.80,each,1,,ST22-20,2026-11-27,2026-12-11
        tube-2x2-14ga,24',35.10,each,1,,ST22-24,2026-11-27,2026-12-11
        drip-trim-grey,10'-2",14.20,each,1,,DT10,2026-11-27,2026-12-11
        """);
    sample.put(
        "prices/tollgate.csv",
        """
        material,length,price,per
        tube-2x2-14ga,20',1.45,ft
        screw-2-grey,,18.40,pack
        """);
    sample.put("on-hand.csv", "material,length,qty,place\nangle-2x2,20',3,B2\n");
    sample.put(
        "rack.csv",
        """
        id,material,length,ends,place,lot
        R7,tube-2x2-14ga,9'-11",sawn,A1,
        R9,tube-2x2-14ga,7'-2-1/2",one-mill,A1,H42
        """);
    sample.put(
        "jobs/mill-lean-to.yaml",
        """
        job: mill-lean-to
        status: firm
        due: 2026-12-04
        times: 2
        pieces:
          tube-2x2-14ga:
            - 8 @ 9'-6"  P1  post
            - { qty: 4, length: 3'-10", mark: B1, for: brace }
          angle-2x2:
            - "6 @ 6'-6 - shelf #2"
        """);
    sample.put(
        "jobs/ferry-canopy.csv", "material,length,qty,mark,for\ndrip-trim-grey,8'-4\",6,T1,\n");
    sample.put(
        "jobs/chapel-barn.yaml",
        "job: chapel-barn\nstatus: bid\npieces:\n  angle-2x2: [2 @ 10' A1]\n");
    return sample;
  }

  /** The same with a kit and a job made of it. */
  public static SampleFolder withKits() {
    SampleFolder sample = sound();
    sample.put(
        "kits/bus-shelter.yaml",
        """
        pieces:
          tube-2x2-14ga:
            - 4 @ 7'-8" P1 post
            - { qty: 2, length: 5'-1/2", mark: B1 }
          angle-2x2: [3 @ 4'-3"]
        """);
    sample.put(
        "jobs/quarry-stops.yaml",
        """
        job: quarry-stops
        status: firm
        kits:
          - { kit: bus-shelter, times: 2, prefix: N- }
          - bus-shelter
        change:
          N-P1: 9
          B1: dropped
        """);
    return sample;
  }

  /** The same with runs, in a job and in a kit. */
  public static SampleFolder withKitsAndRuns() {
    SampleFolder sample = withKits();
    sample.put(
        "kits/walkway.yaml",
        """
        runs:
          angle-2x2:
            - { mark: U1, length: 36', qty: 2, joint: butt, butt-gap: 1/8", bearings: { first: 4', spacing: 8' } }
        """);
    sample.put(
        "jobs/boat-cover.yaml",
        """
        job: boat-cover
        kits:
          - { kit: walkway, prefix: W- }
        runs:
          drip-trim-grey:
            - mark: T1
              length: 36'-8"
              qty: 2
              for: eave
              joint: lap
              lap: 2"
              shortest-piece: 2'
              stagger: 6"
            - { mark: T2, length: 60', qty: 1, joint: lap, lap: 2", longest-unbroken: 40', gap: 1/2", closing: start }
          tube-2x2-14ga:
            - { mark: U2, length: 44', qty: 3, joint: butt, joints-at: [12', 24', 36'], extra-joints: 1, add-at-end: 2" }
        """);
    return sample;
  }

  public SampleFolder put(String file, String text) {
    files.put(file, text);
    return this;
  }

  public SampleFolder remove(String file) {
    files.remove(file);
    return this;
  }

  /** Replaces a text that must be there. */
  public SampleFolder replace(String file, String text, String by) {
    String old = files.get(file);
    if (old == null || !old.contains(text)) {
      throw new IllegalArgumentException(file + " does not contain " + text);
    }
    files.put(file, old.replace(text, by));
    return this;
  }

  SortedMap<String, String> files() {
    return files;
  }

  public Path write(Path directory) throws IOException {
    for (var file : files.entrySet()) {
      Path path = directory.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.writeString(path, file.getValue());
    }
    return directory;
  }

  public OrderInput read(Path directory) throws IOException {
    FolderReading reading = OrderFolder.read(write(directory), JobChoice.firm());
    if (reading instanceof FolderReading.Sound sound) {
      return sound.input();
    }
    throw new AssertionError("\n" + Fault.print(((FolderReading.Faulty) reading).faults()));
  }

  public List<Fault> faults(Path directory) throws IOException {
    return OrderFolder.read(write(directory), JobChoice.firm())
            instanceof FolderReading.Faulty faulty
        ? faulty.faults()
        : List.of();
  }

  public static String lines(List<Fault> faults) {
    return faults.stream()
        .map(fault -> fault.place().print() + " | " + fault.field() + " | " + fault.wrong())
        .collect(Collectors.joining("\n"));
  }
}
