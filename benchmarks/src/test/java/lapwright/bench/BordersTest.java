package lapwright.bench;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class BordersTest {
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("lapwright.bench");

  @Test
  void onlyMethodsUseTheGeneralPurposeSolvers() {
    noClasses()
        .that()
        .resideOutsideOfPackage("lapwright.bench.method")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("com.google.ortools..")
        .check(CLASSES);
  }

  @Test
  void instancesKnowNoMethods() {
    noClasses()
        .that()
        .resideInAPackage("lapwright.bench.instance")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("lapwright.bench", "lapwright.bench.method", "lapwright.exact")
        .check(CLASSES);
  }

  @Test
  void onlyTheMainClassTouchesTheStandardStreams() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("lapwright.bench.Main")
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .callMethod(System.class, "exit", int.class)
        .check(CLASSES);
  }

  @Test
  void packagesHaveNoCycles() {
    slices().matching("lapwright.(**)").should().beFreeOfCycles().check(CLASSES);
  }
}
