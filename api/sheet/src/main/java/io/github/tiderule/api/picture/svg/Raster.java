package io.github.tiderule.api.picture.svg;

import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import org.apache.batik.transcoder.SVGAbstractTranscoder;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.PNGTranscoder;

/** A curve as an image of points. */
public final class Raster {

  private Raster() {}

  /**
   * The picture as a PNG file.
   *
   * @param svg the whole document, as a curve gives it
   * @param pixels its breadth, 1 to 10 000
   * @throws IllegalArgumentException if the breadth is something else, or that is no picture
   * @throws IllegalStateException if the machine has no font to write with
   */
  public static byte[] png(String svg, int pixels) {
    if (pixels < 1 || pixels > 10_000) {
      throw new IllegalArgumentException("not a breadth of an image: " + pixels);
    }
    System.setProperty("java.awt.headless", "true");
    PNGTranscoder transcoder = new PNGTranscoder();
    transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_WIDTH, (float) pixels);
    transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_EXECUTE_ONLOAD, false);
    transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_ALLOWED_SCRIPT_TYPES, "");
    transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_ALLOW_EXTERNAL_RESOURCES, false);
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    try {
      transcoder.transcode(new TranscoderInput(new StringReader(svg)), new TranscoderOutput(png));
    } catch (TranscoderException e) {
      throw new IllegalArgumentException("not a picture", e);
    } catch (LinkageError | InternalError e) {
      throw new IllegalStateException("This machine has no fonts to write on an image with.", e);
    }
    return png.toByteArray();
  }
}
