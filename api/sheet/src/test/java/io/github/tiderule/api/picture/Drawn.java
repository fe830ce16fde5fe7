package io.github.tiderule.api.picture;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** A picture read back from its markup. */
record Drawn(Document document) {

  /** Breadth of a letter of a sans-serif face, in its size: an average over English words. */
  private static final double LETTER = 0.52;

  static Drawn of(String svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      return new Drawn(factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg))));
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new AssertionError("not well formed: " + e.getMessage(), e);
    }
  }

  List<Element> all(String name) {
    NodeList found = document.getElementsByTagName(name);
    List<Element> all = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      all.add((Element) found.item(i));
    }
    return all;
  }

  /** Every text with the place it takes. */
  List<Words> words() {
    return all("text").stream().map(Words::of).toList();
  }

  List<String> texts() {
    return words().stream().map(Words::text).toList();
  }

  double breadth() {
    return number(document.getDocumentElement(), "width");
  }

  double height() {
    return number(document.getDocumentElement(), "height");
  }

  static double number(Element element, String attribute) {
    return Double.parseDouble(element.getAttribute(attribute));
  }

  /** Words and the box about them. */
  record Words(String text, double left, double top, double right, double bottom) {

    private static Words of(Element element) {
      double letter = number(element, "font-size");
      double breadth = LETTER * letter * element.getTextContent().length();
      double x = number(element, "x");
      double left =
          switch (element.getAttribute("text-anchor")) {
            case "start" -> x;
            case "middle" -> x - breadth / 2;
            default -> x - breadth;
          };
      double y = number(element, "y");
      return new Words(
          element.getTextContent(), left, y - 0.72 * letter, left + breadth, y + 0.2 * letter);
    }

    boolean meets(Words other) {
      return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
  }
}
