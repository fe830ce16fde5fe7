package io.github.tiderule.api.paper;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Markup;
import java.util.List;

/**
 * Parts one below the other, made to fit on some pages.
 *
 * @param title what the document is called
 * @param restElsewhere where what is left out can be read
 * @param most pages it may have
 */
record Sheet(String title, String restElsewhere, String kind, int most, List<Part> parts) {

  private static final Texts TEXTS = Texts.ofReports();

  /** The sheet as a PDF file; what does not fit with the least room is longer than it should be. */
  byte[] pdf(PaperSize paper) {
    for (int step = 0; step < Room.LEAST; step++) {
      Pdf pdf = Pdf.of(html(paper, new Room(step)), most);
      if (pdf.pages() <= most) {
        return pdf.bytes();
      }
    }
    return Pdf.of(html(paper, new Room(Room.LEAST)), Integer.MAX_VALUE).bytes();
  }

  private String html(PaperSize paper, Room room) {
    Html html = new Html(room, restElsewhere);
    parts.forEach(part -> part.write(html, room));
    return "<!DOCTYPE html>\n<html lang=\""
        + TEXTS.say("language")
        + "\"><head><title>"
        + Markup.escaped(title)
        + "</title>\n<meta name=\"subject\" content=\""
        + Markup.escaped(TEXTS.say("paper.subject"))
        + "\" />\n<style>\n"
        + "@page { size: "
        + paper.css()
        + "; @bottom-right { content: \""
        + TEXTS.say("paper.page", "\" counter(page) \"", "\" counter(pages) \"")
        + "\"; font: 7.5pt 'Liberation Sans'; color: #444; } }\n"
        + Pdf.style()
        + "</style></head>\n<body class=\""
        + kind
        + " step"
        + room.step()
        + "\">\n"
        + html
        + "</body></html>\n";
  }
}
