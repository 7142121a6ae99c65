package lapwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import lapwright.files.OrderInput;
import lapwright.files.answers.PricesJson;
import lapwright.files.jobs.JobChoice;
import lapwright.files.source.Nearest;
import lapwright.paperwork.PricesPaper;
import lapwright.print.PricesText;
import lapwright.print.Style;
import lapwright.shop.Material;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What each material costs over all suppliers. */
@Command(
    name = "prices",
    description = {
      "Each material over all suppliers, the cheapest by length first, with the day of the price and"
          + " whether it is still good; then the counted goods, the cheapest by the piece first.",
    },
    footerHeading = "%nExample:%n",
    footer = "  lapwright prices my-shop --material tube-3x3-11ga")
final class PricesCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(paramLabel = "FOLDER", description = "The folder of the order.")
  private Path folder = Path.of("");

  @Option(
      names = "--material",
      paramLabel = "NAME",
      description = "Only this material or item; may be given several times.")
  private List<String> materials = new ArrayList<>();

  @Mixin private PaperOptions papers = new PaperOptions();

  PricesCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    OrderInput input = desk.read(folder, JobChoice.firm());
    if (input == null) {
      return ExitStatus.WRONG_INPUT;
    }
    List<String> known =
        new ArrayList<>(input.order().materials().stream().map(Material::id).toList());
    known.addAll(new TreeSet<>(input.order().items().keySet()));
    for (String name : materials) {
      if (!known.contains(name)) {
        desk.tell(
            "lapwright: --material "
                + name
                + ": the shop has no such material or item. "
                + Nearest.advice(name, known, "It has: " + String.join(", ", known) + "."));
        return ExitStatus.WRONG_INPUT;
      }
    }
    PricesPaper paper = PricesPaper.of(input.order(), papers.day(desk.surroundings()), materials);
    Style style = papers.style(input.order().shop(), desk.surroundings());
    desk.print(
        papers.isJson() ? PricesJson.text(paper, style.units()) : PricesText.render(paper, style));
    return ExitStatus.DONE;
  }
}
