package lapwright.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.stream.Stream;

/** The borders between the packages of the program. */
@AnalyzeClasses(packages = "lapwright", importOptions = ImportOption.DoNotIncludeTests.class)
class CliHouseTest {

  @ArchTest
  static final ArchRule jacksonOnlyInFiles =
      noClasses()
          .that()
          .resideOutsideOfPackage("lapwright.files..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("com.fasterxml.jackson..", "org.yaml..");

  @ArchTest
  static final ArchRule picocliOnlyInCli =
      noClasses()
          .that()
          .resideOutsideOfPackage("lapwright.cli")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("picocli..");

  @ArchTest
  static final ArchRule exitsAndStreamsOnlyInMain =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("lapwright.cli.Main")
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .accessField(System.class, "in")
          .orShould()
          .callMethod(System.class, "exit", int.class);

  @ArchTest
  static final ArchRule printReadsNoFilesAndSolvesNothing =
      noClasses()
          .that()
          .resideInAPackage("lapwright.print")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "lapwright.cli",
              "lapwright.files..",
              "lapwright.exact",
              "lapwright.colgen",
              "lapwright.mip",
              "lapwright.problem");

  @ArchTest
  static final ArchRule filesKnowNoCommandAndNoSolver =
      noClasses()
          .that()
          .resideInAPackage("lapwright.files..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "lapwright.cli",
              "lapwright.print",
              "lapwright.exact",
              "lapwright.colgen",
              "lapwright.mip",
              "lapwright.problem");

  @ArchTest
  static final ArchRule noCycles = slices().matching("lapwright.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule noCyclesInsideFiles =
      slices().matching("lapwright.(**)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule sourceKnowsNoOtherFiles = usesOfFilesOnly("lapwright.files.source");

  @ArchTest
  static final ArchRule theShopKnowsNoJobs =
      usesOfFilesOnly("lapwright.files.shop", "lapwright.files.source");

  @ArchTest
  static final ArchRule jobsKnowTheShop =
      usesOfFilesOnly("lapwright.files.jobs", "lapwright.files.shop", "lapwright.files.source");

  @ArchTest
  static final ArchRule papersReadNoJobs =
      usesOfFilesOnly("lapwright.files.papers", "lapwright.files.shop", "lapwright.files.source");

  /** A package of files may use these others of files and no more. */
  private static ArchRule usesOfFilesOnly(String name, String... others) {
    List<String> allowed = Stream.concat(Stream.of(name), Stream.of(others)).toList();
    return noClasses()
        .that()
        .resideInAPackage(name)
        .should()
        .dependOnClassesThat(
            DescribedPredicate.<JavaClass>describe(
                "are of files outside " + allowed,
                other ->
                    (other.getPackageName() + ".").startsWith("lapwright.files.")
                        && !allowed.contains(other.getPackageName())));
  }
}
