@echo off
rem Starts Blindlap. Builds it on first use; delete the folder target to build it again.
setlocal
set "HERE=%~dp0"
if not exist "%HERE%target\blindlap-0.1.0.jar" (
  echo Building Blindlap; the first time takes a minute or two. 1>&2
  pushd "%HERE%"
  call mvn -B -q -Dmaven.test.skip=true -Dspotless.check.skip=true -Djacoco.skip=true package || (popd & exit /b 3)
  popd
)
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
"%JAVA%" -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -Dfile.encoding=UTF-8 --module-path "%HERE%target\javafx" --add-modules javafx.controls,javafx.swing -cp "%HERE%target\blindlap-0.1.0.jar;%HERE%target\lib\*" blindlap.Main %*
exit /b %ERRORLEVEL%
