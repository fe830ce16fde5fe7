package io.github.tiderule.api.paper;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import io.github.tiderule.engine.Tiderule;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.EnumSet;
import java.util.Objects;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.jspecify.annotations.Nullable;

/**
 * HTML set on pages: tagged, with a title and a language, its font within it.
 *
 * <p>The font is Liberation Sans, which covers Latin, Greek and Cyrillic and comes with the PDF
 * library under the SIL Open Font License 1.1. What it has no sign for becomes a question mark.
 * Nothing is fetched from anywhere.
 */
record Pdf(byte[] bytes, int pages) {

  private static final String FAMILY = "Liberation Sans";
  private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
  private static final int REGULAR = 400;
  private static final String STYLE = "paper.css";

  /**
   * Sets a document, if it has no more than so many pages; beyond that only counts them.
   *
   * @param html well formed, with its style in it
   */
  static Pdf of(String html, int most) {
    System.setProperty("java.awt.headless", "true");
    XRLog.setLoggingEnabled(false);
    Path font = null;
    try (BatikSVGDrawer pictures = new BatikSVGDrawer()) {
      font = Files.createTempFile("tiderule", ".ttf");
      try (InputStream in = font()) {
        Files.copy(in, font, StandardCopyOption.REPLACE_EXISTING);
      }
      return of(html, pictures, font, most);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      delete(font);
    }
  }

  private static void delete(@Nullable Path file) {
    if (file != null) {
      try {
        Files.deleteIfExists(file);
      } catch (IOException e) {
        // left to those who clear temporary files
      }
    }
  }

  private static Pdf of(String html, BatikSVGDrawer pictures, Path font, int most)
      throws IOException {
    // the document closes the font
    TrueTypeFont letters = new TTFParser().parse(new RandomAccessReadBufferedFile(font.toFile()));
    // to look for ligatures in every word takes longer than all the rest of drawing it
    letters.setEnableGsub(false);
    try (PDDocument document = new PDDocument()) {
      return of(html, pictures, font, PDType0Font.load(document, letters, true), document, most);
    }
  }

  private static Pdf of(
      String html,
      BatikSVGDrawer pictures,
      Path font,
      PDFont letters,
      PDDocument document,
      int most)
      throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.usePDDocument(document);
    builder.useFont(
        new PDFontSupplier(letters), FAMILY, REGULAR, BaseRendererBuilder.FontStyle.NORMAL, true);
    // the drawer of pictures takes a font from a file only; without, it asks the machine for one
    builder.useFont(
        font.toFile(),
        FAMILY,
        REGULAR,
        BaseRendererBuilder.FontStyle.NORMAL,
        true,
        EnumSet.of(BaseRendererBuilder.FSFontUseCase.SVG));
    builder.useSVGDrawer(pictures);
    builder.usePdfUaAccessibility(true);
    builder.useReplacementText("?");
    builder.useUnicodeLineBreaker(new LineBreaks());
    builder.withProducer("Tiderule " + Tiderule.VERSION);
    for (ExternalResourceControlPriority when : ExternalResourceControlPriority.values()) {
      builder.useExternalResourceAccessControl((uri, kind) -> false, when);
    }
    builder.withHtmlContent(html, null);
    builder.toStream(out);
    try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
      renderer.layout();
      int pages = renderer.getRootBox().getLayer().getPages().size();
      if (pages <= most) {
        renderer.createPDF();
      }
      return new Pdf(out.toByteArray(), pages);
    }
  }

  private static InputStream font() {
    return Objects.requireNonNull(PDDocument.class.getResourceAsStream(FONT), FONT);
  }

  /** The style sheet of all sheets. */
  static String style() {
    try (InputStream in = Pdf.class.getResourceAsStream(STYLE)) {
      return new String(Objects.requireNonNull(in, STYLE).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
