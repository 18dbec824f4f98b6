package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.SvgSurface;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;

/** Writes every sample drawing as SVG; run by hand to look at them. */
final class SvgPictures {
  private SvgPictures() {}

  public static void main(String[] folderWidthScale) throws IOException {
    Path folder = Files.createDirectories(Path.of(folderWidthScale[0]));
    double width = Double.parseDouble(folderWidthScale[1]);
    double scale = Double.parseDouble(folderWidthScale[2]);
    Palette palette = Palette.valueOf(folderWidthScale[3]);
    Map<String, Drawing> all = new TreeMap<>(Samples.all());
    all.putAll(MoreSamples.all());
    for (Map.Entry<String, Drawing> each : all.entrySet()) {
      Files.writeString(
          folder.resolve(each.getKey() + ".svg"),
          SvgSurface.svg(each.getValue(), width, scale, palette, each.getKey()));
    }
  }
}
