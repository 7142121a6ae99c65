package lapwright.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lapwright.files.jobs.JobFields;
import lapwright.files.shop.ShopFields;
import lapwright.files.source.Inputs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Holds the hand-kept schemas to the fields that the reader knows and to files that it takes. */
final class SchemasTest {
  @TempDir Path dir;

  @Test
  void everySampleAndStartFileIsValid() throws IOException {
    List<Path> folders =
        new ArrayList<>(List.of(SampleFolder.withKitsAndRuns().write(dir.resolve("sample"))));
    Path start = dir.resolve("start");
    StartFolder.write(start);
    folders.add(start);
    try (Stream<Path> samples = Files.list(sampleOrders())) {
      samples.filter(Files::isDirectory).forEach(folders::add);
    }
    int validated = 0;
    for (Path folder : folders) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.filter(path -> path.toString().endsWith(".yaml")).toList()) {
          String kind = kindOf(file);
          if (Schemas.KINDS.contains(kind)) {
            assertEquals(List.of(), messages(kind, Files.readString(file)), file.toString());
            validated++;
          }
        }
      }
    }
    assertTrue(validated > 10, validated + " files");
  }

  @Test
  void listsEveryFieldThatTheReaderKnows() throws IOException {
    assertEquals(OrderFile.FIELDS, fields("order", ""));
    assertEquals(ShopFields.SHOP, fields("shop", ""));
    assertEquals(ShopFields.SAW, fields("shop", "/$defs/saw"));
    assertEquals(ShopFields.MATERIALS, fields("materials", ""));
    assertEquals(ShopFields.MATERIAL, fields("materials", "/$defs/material"));
    assertEquals(ShopFields.STOCK, fields("materials", "/$defs/stock"));
    assertEquals(ShopFields.SUPPLIERS, fields("suppliers", ""));
    assertEquals(ShopFields.SUPPLIER, fields("suppliers", "/$defs/supplier"));
    assertEquals(JobFields.JOB, fields("job", ""));
    assertEquals(JobFields.PIECE, fields("job", "/$defs/piece"));
    assertEquals(JobFields.RUN, fields("job", "/$defs/run"));
    assertEquals(JobFields.BEARINGS, fields("job", "/$defs/run/properties/bearings"));
    assertEquals(JobFields.KIT_USE, fields("job", "/$defs/kit"));
    assertEquals(JobFields.KIT, fields("kit", ""));
    assertEquals(JobFields.PIECE, fields("kit", "/$defs/piece"));
    assertEquals(JobFields.RUN, fields("kit", "/$defs/run"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "job       | {pieces: {tube: [{qty: 4, lenght: 10'}]}}",
        "job       | {pieces: {tube: [{qty: 2.5, length: 10'}]}}",
        "job       | {pieces: {tube: [8 at 10']}}",
        "job       | {status: sold}",
        "job       | {due: next week}",
        "job       | {runs: {trim: [{mark: T1, length: 10', qty: 1}]}}",
        "job       | {runs: {trim: [{mark: T1, length: 10', qty: 1, joint: glued}]}}",
        "job       | {runs: {trim: [{mark: T1, length: 10', qty: 1, joint: butt, bearing: 4'}]}}",
        "job       | {kits: [{times: 2}]}",
        "job       | {change: {P1: none}}",
        "job       | {items: {screw: -4}}",
        "job       | {items: [screw]}",
        "suppliers | {suppliers: {mill: {day: 2}}}",
        "suppliers | {suppliers: {mill: {order-by: noon}}}",
        "kit       | {status: firm, pieces: {}}",
        "materials | {materials: {tube: {saw: a, stock: [{length: 20', price: 4}]}}}",
        "materials | {materials: {tube: {name: no saw}}}",
        "materials | {materials: {tube: {saw: a, one-lot-per: week}}}",
        "shop      | {name: A, units: feet, saws: {a: {kerf: 0}}}",
        "shop      | {name: A, units: mm, saws: {a: {}}}",
        "order     | {until: 2026-12-04}",
      })
  void refusesWhatTheReaderRefuses(String kind, String yaml) throws IOException {
    assertFalse(messages(kind, yaml).isEmpty(), yaml);
  }

  private static String kindOf(Path file) {
    return file.getParent().endsWith("jobs")
        ? "job"
        : file.getParent().endsWith("kits") ? "kit" : Inputs.stem(file);
  }

  private static List<String> messages(String kind, String yaml) throws IOException {
    JsonNode node = new YAMLMapper().readTree(yaml);
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(Schemas.text(kind));
    return schema.validate(node).stream().map(Object::toString).toList();
  }

  private static List<String> fields(String kind, String at) throws IOException {
    JsonNode schema = new ObjectMapper().readTree(Schemas.text(kind));
    List<String> names = new ArrayList<>();
    schema.at(at + "/properties").fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static Path sampleOrders() {
    Path here = Path.of("sample-orders");
    return Files.isDirectory(here) ? here : Path.of("..", "sample-orders");
  }
}
