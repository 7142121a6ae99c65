package lapwright.files.answers;

import lapwright.files.saved.Json;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.LayoutPaper.Alike;
import lapwright.paperwork.LayoutPaper.FromTicket;
import lapwright.paperwork.LayoutPaper.Laid;
import lapwright.paperwork.LayoutPaper.Meeting;
import lapwright.paperwork.SpotPaper;
import lapwright.paperwork.TicketPaper.Step;
import lapwright.paperwork.TicketPaper.Ticket;

/** One run that was asked for on the spot. */
public final class SpotJson {
  private SpotJson() {}

  public static String text(SpotPaper paper, LengthStyle units) {
    Json json = new Json();
    return json.text(
        () -> {
          json.words("mark", paper.layout().run().mark());
          json.length("length", paper.layout().run().length(), units);
          json.number("qty", paper.layout().lines());
          json.words("proof", paper.proof().word());
          json.mm("boughtMm", paper.bought());
          json.mm("lowerBoundMm", paper.bound());
          SpotPaper.Reach reach = paper.reach();
          if (reach != null) {
            json.object(
                "reach",
                () -> {
                  json.number("pieces", reach.pieces());
                  json.mm("mostMm", reach.most());
                  json.mm("onePieceLessMm", reach.before());
                });
          }
          json.list("lines", paper.layout().groups(), group -> lines(json, group, units));
          json.list("sticks", paper.tickets().tickets(), ticket -> stick(json, ticket, units));
          json.object(
              "account",
              () -> {
                json.mm("drawn", paper.account().drawn());
                json.mm("finished", paper.account().finished());
                json.mm("laps", paper.account().laps());
                json.mm("kerf", paper.account().kerf());
                json.mm("endTrim", paper.account().endTrim());
                json.mm("offcutsKept", paper.account().offcutsKept());
                json.mm("scrap", paper.account().scrap());
                json.mm("shortAllowance", paper.account().shortAllowance());
              });
        });
  }

  private static void lines(Json json, Alike group, LengthStyle units) {
    json.wordList("lines", group.lines().stream().map(String::valueOf).toList());
    json.list("pieces", group.pieces(), piece -> piece(json, piece, units));
    json.list("joints", group.joints(), joint -> joint(json, joint, units));
  }

  private static void piece(Json json, Laid piece, LengthStyle units) {
    json.number("piece", piece.number());
    json.length("length", piece.length(), units);
    json.length("from", piece.start(), units);
    json.length("to", piece.end(), units);
    json.wordList("sticks", piece.from().stream().map(FromTicket::ticket).toList());
  }

  private static void joint(Json json, Meeting joint, LengthStyle units) {
    json.words("joint", joint.kind().word());
    json.length("at", joint.at(), units);
    json.length("width", joint.width(), units);
  }

  private static void stick(Json json, Ticket ticket, LengthStyle units) {
    json.words("stick", ticket.name());
    json.length("length", ticket.supply().length(), units);
    json.list("cuts", ticket.steps(), step -> cut(json, step, units));
    json.length("left", ticket.offcut(), units);
  }

  private static void cut(Json json, Step step, LengthStyle units) {
    json.words("mark", step.cut().mark());
    json.length("length", step.cut().length(), units);
    json.number("qty", step.cut().qty());
  }
}
