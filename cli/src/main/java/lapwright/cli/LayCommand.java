package lapwright.cli;

import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.RunRules;
import lapwright.Shortage;
import lapwright.files.MarkerNames;
import lapwright.files.answers.SpotJson;
import lapwright.files.jobs.SpotRun;
import lapwright.files.source.Note;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.SpotPaper;
import lapwright.print.ShortageText;
import lapwright.print.SpotText;
import lapwright.print.Style;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** One run on the spot. */
@Command(
    name = "lay",
    sortOptions = false,
    description = {
      "One run on the spot, without any files: how many pieces it takes, how they are laid, and what"
          + " is left of the sticks. Give --length, --stock and how pieces meet: --lap, or --joint"
          + " butt. Lengths such as 40ft, 36ft-8in, 4in, 1/8in or 3200mm need no quotes.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  lapwright lay --length 40ft --stock 10ft --lap 4in",
      "  lapwright lay --length 36ft --qty 5 --stock 24ft --butt-gap 1/8in --bearings 0,12ft"
    })
final class LayCommand implements Callable<Integer> {
  private final Desk desk;

  @Mixin private RunOptions run = new RunOptions();

  @Option(
      names = "--time",
      order = 42,
      paramLabel = "SECONDS",
      defaultValue = "60",
      converter = PlanningOptions.Seconds.class,
      description = "Stop planning after this time (default: ${DEFAULT-VALUE}).")
  private long nanos;

  @Option(
      names = "--units",
      order = 40,
      paramLabel = "ft-in|mm",
      defaultValue = "ft-in",
      converter = PaperOptions.Units.class,
      description = "Print lengths that way (default: ${DEFAULT-VALUE}).")
  private LengthStyle units = LengthStyle.FEET_INCHES;

  @Option(names = "--json", order = 41, description = "Print the result as JSON.")
  private boolean json;

  LayCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    boolean mm = units == LengthStyle.MILLIMETRES;
    SpotRun.Reading reading =
        SpotRun.read(run.typed(), mm ? Length.ofMm(1) : Length.ofSixteenths(1));
    MaterialOrder order = reading.order();
    if (order == null) {
      desk.tell(reading.faults());
      return ExitStatus.WRONG_USAGE;
    }
    for (Note note : reading.notes()) {
      desk.tell(note.text() + ".");
    }
    Shop shop = new Shop("", "", mm ? Shop.Units.MILLIMETRES : Shop.Units.FEET_INCHES, true);
    Style style = PaperOptions.styleOn(desk.surroundings(), units);
    Shortage.NoSplit against = RunRules.against(order, order.runs().get(0));
    if (against != null) {
      desk.tell(ShortageText.renderRun(against, style, SpotRun::inOptions).stripTrailing());
      return ExitStatus.NO_PLAN;
    }
    PlanResult result =
        new Planning(desk.surroundings())
            .within(
                nanos,
                shop,
                List.of(order),
                effort ->
                    new Planner(new MarkerNames(List.of()), desk.surroundings().threads())
                        .plan(shop, List.of(order), Map.of(), effort));
    if (!(result instanceof PlanResult.Planned planned)) {
      return desk.tellNoPlan(result, style);
    }
    SpotPaper paper = SpotPaper.of(planned.plan());
    desk.print(json ? SpotJson.text(paper, units) : SpotText.render(paper, style));
    return ExitStatus.DONE;
  }
}
