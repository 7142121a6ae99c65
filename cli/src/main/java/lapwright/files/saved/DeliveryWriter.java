package lapwright.files.saved;

import lapwright.paperwork.Deliveries;
import lapwright.paperwork.Delivery;

/** Writes what the suppliers bring and charge delivered; it follows from the plan, for readers. */
final class DeliveryWriter {
  private final Json json;

  DeliveryWriter(Json json) {
    this.json = json;
  }

  void write(Deliveries deliveries) {
    json.money("asPlanned", deliveries.asPlanned());
    json.list("suppliers", deliveries.deliveries(), this::supplier);
    json.list("fromOneSupplier", deliveries.fromOne(), this::fromOne);
    json.truth("proved", deliveries.proved());
  }

  private void supplier(Delivery delivery) {
    json.words("supplier", delivery.terms().id());
    if (delivery.priced()) {
      json.money("goods", delivery.goods());
      json.money("freight", delivery.freight());
      json.money("delivered", delivery.delivered());
      json.money("underMinimumBy", delivery.shortOfMinimum());
    }
    json.list(
        "orderBy",
        delivery.lastDays(),
        day -> {
          json.day("day", day.order());
          json.wordsIfAny("time", delivery.terms().orderBy());
          json.day("due", day.due());
          json.wordList("jobs", day.jobs());
        });
    json.day("pricesGoodUntil", delivery.goodUntil());
  }

  private void fromOne(Deliveries.FromOne one) {
    json.words("supplier", one.supplier());
    json.money("delivered", one.delivered());
    json.truth("underMinimum", one.underMinimum());
    json.wordList("lacking", one.lacking());
  }
}
