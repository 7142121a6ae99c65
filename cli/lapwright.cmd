@echo off
rem Starts Lapwright on Windows. Beside lib\ and native\ (an unpacked zip) it starts what lies there.
rem In a working copy it starts cli\target\lapwright, which it builds with Maven when it is missing;
rem after a change of the sources say "mvn package".
setlocal
set "HERE=%~dp0"
set "HOME_DIR=%HERE%."
if exist "%HERE%lib\lapwright.jar" goto java
set "HOME_DIR=%HERE%target\lapwright"
if exist "%HOME_DIR%\lib\lapwright.jar" goto java
where mvn >nul 2>nul
if errorlevel 1 (
  echo lapwright: it must be built once, and Maven ^(mvn^) is not installed. 1>&2
  exit /b 1
)
echo lapwright: building once; the first time Maven also downloads libraries ... 1>&2
pushd "%HERE%.."
call mvn -q -B -Dstyle.color=never -Dmaven.test.skip -Djacoco.skip -Dassembly.skipAssembly -pl cli -am package <nul 1>&2
if errorlevel 1 (
  popd
  echo lapwright: the build failed; its messages are above. 1>&2
  exit /b 1
)
popd

:java
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
if "%JAVA%"=="java" (
  where java >nul 2>nul
  if errorlevel 1 (
    echo lapwright: Java 17 or newer is needed: install it, or set JAVA_HOME. 1>&2
    exit /b 1
  )
)
set "NATIVE=%HOME_DIR%\native\ortools-win32-x86-64"
rem The solver's library finds its neighbours on the PATH.
set "PATH=%NATIVE%;%PATH%"
set "OPTIONS=-XX:+UseSerialGC -Xshare:auto -Xlog:disable -Xlog:all=error:stderr"
rem Most orders are planned before the second compiler pays: it comes in ten times later than usual.
set "LATE=-XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=6000 -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000"
set "ARCHIVE=%HOME_DIR%\classes.jsa"
if not exist "%ARCHIVE%" (
  "%JAVA%" %OPTIONS% "-Djava.library.path=%NATIVE%" "-XX:ArchiveClassesAtExit=%ARCHIVE%" -cp "%HOME_DIR%\lib\lapwright.jar" lapwright.cli.FirstStart <nul >nul 2>nul
)
"%JAVA%" %OPTIONS% %LATE% "-Djava.library.path=%NATIVE%" "-XX:SharedArchiveFile=%ARCHIVE%" -cp "%HOME_DIR%\lib\lapwright.jar" lapwright.cli.Main %*
exit /b %ERRORLEVEL%
