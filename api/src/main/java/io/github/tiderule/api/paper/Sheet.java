package io.github.tiderule.api.paper;

import io.github.tiderule.api.node.Markup;
import java.util.List;

/**
 * Parts one below the other, made to fit on some pages.
 *
 * @param title what the document is called
 * @param restElsewhere where what is left out can be read
 * @param most pages it may have
 */
record Sheet(String title, String restElsewhere, String kind, int most, List<Part> parts) {

  /**
   * The sheet as a PDF file.
   *
   * @throws IllegalStateException if it does not fit even with the least room; it always should
   */
  byte[] pdf(PaperSize paper) {
    for (int step = 0; step <= Room.LEAST; step++) {
      Pdf pdf = Pdf.of(html(paper, new Room(step)));
      if (pdf.pages() <= most) {
        return pdf.bytes();
      }
    }
    throw new IllegalStateException("the sheet does not fit on " + most + " pages");
  }

  private String html(PaperSize paper, Room room) {
    Html html = new Html(room, restElsewhere);
    parts.forEach(part -> part.write(html, room));
    return "<!DOCTYPE html>\n<html lang=\"en\"><head><title>"
        + Markup.escaped(title)
        + "</title>\n<meta name=\"subject\" content=\"Timing of breeding\" />\n<style>\n"
        + "@page { size: "
        + paper.css()
        + "; }\n"
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
