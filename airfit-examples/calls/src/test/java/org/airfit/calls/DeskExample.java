package org.airfit.calls;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.files.DayJob;
import org.airfit.files.Disk;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.CardPage;
import org.airfit.jobsheet.CardSheet;
import org.airfit.jobsheet.DayPage;
import org.airfit.jobsheet.DaySheet;
import org.airfit.jobsheet.DayText;
import org.airfit.jobsheet.DiagnosisPage;
import org.airfit.jobsheet.DiagnosisSheet;
import org.airfit.jobsheet.DiagnosisText;
import org.airfit.jobsheet.InventoryPage;
import org.airfit.jobsheet.InventorySheet;
import org.airfit.jobsheet.InventoryText;
import org.airfit.jobsheet.JobSheet;
import org.airfit.jobsheet.LeakPage;
import org.airfit.jobsheet.LeakText;
import org.airfit.jobsheet.PriceListPage;
import org.airfit.jobsheet.PriceListSheet;
import org.airfit.jobsheet.PriceListText;
import org.airfit.jobsheet.WaterPage;
import org.airfit.jobsheet.WaterSheet;
import org.airfit.jobsheet.WaterText;

/**
 * An example of a file that is answered at the desk.
 *
 * @param call the call that answers it
 * @param path where it stands
 * @param beside the files that it names
 */
record DeskExample(String call, Path path, List<Path> beside) {

  private static final Path EXAMPLES = Path.of("..");

  /** Text and page as the program writes them; no text where only the program itself can write it. */
  record Written(String text, String page) {}

  private static DeskExample of(String call, String file, String... beside) {
    Path path = EXAMPLES.resolve(file);
    return new DeskExample(
        call, path, List.of(beside).stream().map(path::resolveSibling).toList());
  }

  /** One of each kind, and one more where a second has other parts. The day of the joinery takes half a minute. */
  static List<DeskExample> all() {
    return List.of(
        of("day", "days/lock-street/smithy.json"),
        of("diagnosis", "diagnoses/saddler-lane/slow-grinder.json"),
        of("water", "treatments/kiln-row/paint-shop.json"),
        of("water", "treatments/chapel-yard/print-works.json"),
        of("leaks", "jobs/joinery/leaks.csv"),
        of(
            "inventory",
            "shops/weir-street/inventory.json",
            "catalogue.json",
            "../../sets/workshop.csv"),
        of("priceList", "shops/canal-row/check.json", "price-list.json", "profiles.csv"),
        of("cards", "jobs/boatyard/weak-sander.json", "catalogue.json"),
        of("cards", "jobs/quarry-road/tire-shop.json", "catalogue.json"));
  }

  String name() {
    return String.valueOf(path.getFileName());
  }

  /** The texts of the file and of those that it names, by name. */
  Map<String, Object> files() throws IOException {
    Map<String, Object> files = new LinkedHashMap<>();
    files.put(name(), Files.readString(path));
    for (Path other : beside) {
      files.put(String.valueOf(other.getFileName()), Files.readString(other));
    }
    return files;
  }

  Map<String, Object> asked() throws IOException {
    return Spread.of("file", name(), "files", files());
  }

  /** What the program writes, by the steps that its programs take. */
  Written written() throws WrongFileException {
    List<Path> read = new ArrayList<>();
    return switch (call) {
      case "day" -> {
        DayJob job = Disk.day(path, read);
        DaySheet sheet = DaySheet.of(job);
        yield new Written(DayText.of(sheet), DayPage.of(sheet));
      }
      case "diagnosis" -> {
        DiagnosisSheet sheet = DiagnosisSheet.of(Disk.diagnosis(path, read));
        yield new Written(DiagnosisText.of(sheet), DiagnosisPage.of(sheet));
      }
      case "water" -> {
        WaterSheet sheet = WaterSheet.of(Disk.water(path, read));
        yield new Written(WaterText.of(sheet), WaterPage.of(sheet));
      }
      case "leaks" ->
        new Written(LeakText.of(Disk.leaks(path, read)), LeakPage.of(Disk.leaks(path, read)));
      case "inventory" -> {
        InventorySheet sheet = InventorySheet.of(Disk.inventory(path, read));
        yield new Written(InventoryText.of(sheet), InventoryPage.of(sheet));
      }
      case "priceList" -> {
        PriceListSheet sheet = PriceListSheet.of(Disk.priceList(path, read));
        yield new Written(PriceListText.of(sheet), PriceListPage.of(sheet));
      }
      default -> new Written("", CardPage.of(CardSheet.of(JobSheet.of(Disk.job(path, read)))));
    };
  }
}
