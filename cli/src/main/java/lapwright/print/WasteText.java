package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.MoneyStyle;
import lapwright.measure.Percent;
import lapwright.paperwork.FactorCauses;
import lapwright.paperwork.JobShare;
import lapwright.paperwork.WasteFigures;
import lapwright.paperwork.WastePaper;
import lapwright.paperwork.WastePaper.MaterialPart;
import lapwright.plan.Account;
import lapwright.print.Table.Kind;

/** Where the material goes, as text. */
public final class WasteText {
  private final WastePaper paper;
  private final Page page;
  private final Shortening shortening;

  private WasteText(WastePaper paper, Style style, Shortening shortening) {
    this.paper = paper;
    this.shortening = shortening;
    page = new Page(style);
  }

  /**
   * The account of all materials, then by material and by job; where the style asks for all of it,
   * or where it is short enough, each material's own account as well.
   */
  public static String render(WastePaper paper, Style style) {
    Page whole = new WasteText(paper, style, Shortening.NONE).write(true);
    if (style.all() || whole.size() <= style.lines()) {
      return whole.printed();
    }
    return Shortening.fitting(style, limit -> new WasteText(paper, style, limit).write(false));
  }

  /** True where all of the paper is printed, so that a divided cost would be seen. */
  public static boolean isWhole(WastePaper paper, Style style) {
    return style.all()
        || new WasteText(paper, style, Shortening.NONE).write(true).size() <= style.lines();
  }

  private Page write(boolean eachMaterial) {
    if (paper.materials().isEmpty()) {
      page.strongText("No waste: the jobs have no pieces to cut.");
      return page;
    }
    answer();
    page.blank();
    causes(paper.total(), paper.bought());
    byMaterial();
    page.blank();
    byJob(paper.jobs(), Math.max(1, shortening.other()));
    if (eachMaterial) {
      page.text(
          "Kerf, end trims and scrap of a stick are shared by the finished lengths on it; kept"
              + " offcuts and surplus are the shop's.",
          2,
          2);
      factor();
      if (paper.materials().size() > 1) {
        paper.materials().forEach(this::oneMaterial);
      }
      if (paper.division() != null) {
        new DivisionText(paper.division(), new MoneyStyle(paper.shop().currency()), page).write();
      }
    } else {
      page.text(
          "Each material by cause and by job, and each job's part of the cost where there are"
              + " prices: --all.",
          2,
          2);
    }
    page.explainSigns();
    return page;
  }

  private void answer() {
    WasteFigures figures = paper.figures();
    boolean feet = page.style().units() == LengthStyle.FEET_INCHES;
    page.strongText(
        "For each "
            + (feet ? "foot" : "metre")
            + " finished, "
            + Phrases.factor(figures.boughtToFinished())
            + (feet ? " ft" : " m")
            + " is bought and "
            + Phrases.factor(figures.drawnToFinished())
            + (feet ? " ft" : " m")
            + " cut, for "
            + Phrases.jobs(paper.jobs().size())
            + ". Of what is cut "
            + figures.wasteKeptUsed().print()
            + " is waste, "
            + figures.wasteKeptLost().print()
            + " if no kept offcut is ever used.");
  }

  private void causes(Account account, Length bought) {
    Table table =
        new Table(page)
            .column("Where it goes", Kind.NAME)
            .column("Length", Kind.NUMBER)
            .column("Of what is cut", Kind.NUMBER);
    Length drawn = account.drawn();
    cause(table, "Finished pieces", account.finished(), drawn);
    causeIfAny(table, "Laps", account.laps(), drawn);
    causeIfAny(table, "Offcuts kept on the rack", account.offcutsKept(), drawn);
    cause(table, "Waste: kerf", account.kerf(), drawn);
    cause(table, "Waste: end trims", account.endTrim(), drawn);
    cause(table, "Waste: scrap", account.scrap(), drawn);
    table.rule();
    table.sum(List.of("Cut", page.length(drawn), percent(drawn, drawn)));
    Length fromBought = bought.minus(account.surplus()).minus(account.shortAllowance());
    boolean same = fromBought.equals(drawn) && bought.equals(drawn);
    if (!same) {
      Length fromStock = drawn.minus(fromBought);
      if (!fromStock.isZero()) {
        table.row(List.of("less from stock on hand and the rack", page.length(fromStock), ""));
      }
      if (!account.surplus().isZero()) {
        table.row(List.of("and surplus, whole sticks", page.length(account.surplus()), ""));
      }
      if (!account.shortAllowance().isZero()) {
        table.row(
            List.of("and what sticks may come short", page.length(account.shortAllowance()), ""));
      }
    }
    table.sum(List.of("Bought", page.length(bought), ""));
    table.print(2);
  }

  /** The factor of an estimate with its causes, which add up to it as printed. */
  private void factor() {
    FactorCauses causes = FactorCauses.of(paper.bought(), paper.total());
    page.blank();
    Table table =
        new Table(page)
            .column(
                page.style().units() == LengthStyle.FEET_INCHES
                    ? "For each foot finished"
                    : "For each metre finished",
                Kind.NAME)
            .column("Factor", Kind.NUMBER);
    part(table, "Finished pieces", causes.finished());
    part(table, "Laps", causes.laps());
    part(table, "Offcuts kept on the rack", causes.offcutsKept());
    part(table, "Kerf", causes.kerf());
    part(table, "End trims", causes.endTrim());
    part(table, "Scrap", causes.scrap());
    table.sum(List.of("Cut", Phrases.factor(causes.cut())));
    part(table, "From stock on hand and the rack", causes.fromStock());
    part(table, "Surplus, whole sticks", causes.surplus());
    part(table, "What sticks may come short", causes.shortAllowance());
    table.rule();
    table.sum(List.of("Bought", Phrases.factor(causes.bought())));
    table.print(2);
  }

  private static void part(Table table, String name, Percent part) {
    if (part.hundredths() != 0) {
      String factor = Phrases.factor(new Percent(Math.abs(part.hundredths())));
      table.row(List.of(name, part.hundredths() < 0 ? "-" + factor : factor));
    }
  }

  private void causeIfAny(Table table, String name, Length length, Length drawn) {
    if (!length.isZero()) {
      cause(table, name, length, drawn);
    }
  }

  private void cause(Table table, String name, Length length, Length drawn) {
    table.row(List.of(name, page.length(length), percent(length, drawn)));
  }

  private static String percent(Length part, Length whole) {
    return Percent.of(part.units(), whole.units()).print();
  }

  private void byMaterial() {
    page.blank();
    Table table =
        new Table(page)
            .column("Material", Kind.NAME)
            .column("Finished", Kind.NUMBER)
            .column(each("Bought"), Kind.NUMBER)
            .column(each("Cut"), Kind.NUMBER)
            .column("Waste", Kind.NUMBER)
            .column("kept unused", Kind.NUMBER)
            .column("Plan", Kind.NAME);
    int shown = Shortening.shown(paper.materials().size(), shortening.main());
    for (MaterialPart part : paper.materials().subList(0, shown)) {
      table.row(
          figures(
              shortening.material(part.material(), part.name()),
              part.account().finished(),
              part.figures(),
              part.proof().word()));
    }
    if (shown < paper.materials().size()) {
      table.note(
          "and "
              + Phrases.count(paper.materials().size() - shown, "more material", "more materials")
              + ": --all");
    }
    table.rule();
    table.sum(figures("All", paper.total().finished(), paper.figures(), ""));
    table.print(2);
  }

  private String each(String what) {
    return what + (page.style().units() == LengthStyle.FEET_INCHES ? "/ft" : "/m");
  }

  private List<String> figures(String name, Length finished, WasteFigures figures, String proof) {
    return List.of(
        name,
        page.length(finished),
        Phrases.factor(figures.boughtToFinished()),
        Phrases.factor(figures.drawnToFinished()),
        figures.wasteKeptUsed().print(),
        figures.wasteKeptLost().print(),
        proof);
  }

  private void byJob(List<JobShare> jobs, int most) {
    boolean laps = jobs.stream().anyMatch(job -> !job.laps().isZero());
    Table table =
        new Table(page)
            .column("Job", Kind.NAME)
            .column("Finished", Kind.NUMBER)
            .columnIf(laps, "Laps", Kind.NUMBER)
            .column("Kerf", Kind.NUMBER)
            .column("End trims", Kind.NUMBER)
            .column("Scrap", Kind.NUMBER)
            .column("Waste", Kind.NUMBER);
    int shown = Shortening.shown(jobs.size(), most);
    jobs.subList(0, shown).forEach(job -> table.row(share(job.job(), job, laps)));
    if (shown < jobs.size()) {
      table.note("and " + Phrases.count(jobs.size() - shown, "more job", "more jobs") + ": --all");
    }
    table.rule();
    jobs.stream().reduce(JobShare::plus).ifPresent(all -> table.sum(share("All", all, laps)));
    table.print(2);
  }

  private List<String> share(String name, JobShare job, boolean laps) {
    List<String> cells = new ArrayList<>();
    cells.add(name);
    cells.add(page.length(job.finished()));
    if (laps) {
      cells.add(page.length(job.laps()));
    }
    cells.add(page.length(job.kerf()));
    cells.add(page.length(job.endTrim()));
    cells.add(page.length(job.scrap()));
    cells.add(job.wasteShare().print());
    return cells;
  }

  private void oneMaterial(MaterialPart part) {
    page.heading(
        part.name()
            + ": "
            + Phrases.sticks(part.sticksBought())
            + " bought, "
            + part.sticksDrawn()
            + " cut");
    causes(part.account(), part.bought());
    page.blank();
    byJob(part.jobs(), Integer.MAX_VALUE);
  }
}
