package lapwright.cli;

import java.util.concurrent.atomic.AtomicInteger;
import lapwright.OffcutNames;
import lapwright.files.OrderInput;

final class TemporaryNames {
  static OffcutNames of(OrderInput input) {
    AtomicInteger n = new AtomicInteger();
    return () -> "N" + n.incrementAndGet();
  }
}
