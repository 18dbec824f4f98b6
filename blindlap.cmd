@echo off
rem Starts Blindlap. Builds it on first use; delete the folder target to build it again.
rem Every path stands in quotes, so that a folder may be called "My rides & more".
setlocal DisableDelayedExpansion
set "HERE=%~dp0"
set "TARGET=%HERE%target"
set "JAR=%TARGET%\blindlap-0.1.0.jar"
if not exist "%JAR%" (
  echo Building Blindlap; the first time takes a minute or two. 1>&2
  if exist "%TARGET%\window.jsa" del /q "%TARGET%\window.jsa" >nul 2>&1
  if exist "%TARGET%\command.jsa" del /q "%TARGET%\command.jsa" >nul 2>&1
  pushd "%HERE%"
  call mvn -B -q -Dmaven.test.skip=true -Dspotless.check.skip=true -Djacoco.skip=true package || (popd & exit /b 3)
  popd
)
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
set "CLASSES=%JAR%;%TARGET%\lib\*"
rem The quick compiler alone, but for what opens or closes a seal, as in the other launcher.
set "LEVEL=1"
for %%C in (commit helper sheets unseal) do if /i "%~1"=="%%C" set "LEVEL=4"
set "WINDOW="
if "%~1"=="" set "WINDOW=yes"
for %%C in (demo --notebook --new) do if /i "%~1"=="%%C" set "WINDOW=yes"
if defined WINDOW goto window

rem A command needs no window. All start from one archive of classes, made once from what a short
rem session has loaded. Where it cannot be made, commands start without, only later.
set "ARCHIVE=%TARGET%\command.jsa"
if not exist "%ARCHIVE%" call :archive
set "SHARE=-Xshare:auto"
if exist "%ARCHIVE%" set "SHARE=-XX:SharedArchiveFile=%ARCHIVE%"
"%JAVA%" -XX:+UseSerialGC -XX:TieredStopAtLevel=%LEVEL% "%SHARE%" -Xlog:cds*=off -Dfile.encoding=UTF-8 -cp "%CLASSES%" blindlap.Main %*
exit /b %ERRORLEVEL%

:window
rem The window's first start leaves an archive of the loaded classes, and the second is quicker.
set "ARCHIVE=%TARGET%\window.jsa"
set "SHARE=-Xshare:auto"
if exist "%ARCHIVE%" (
  set "SHARE=-XX:SharedArchiveFile=%ARCHIVE%"
) else if "%~2"=="" if not "%~1"=="--notebook" if not "%~1"=="--new" (
  set "SHARE=-XX:ArchiveClassesAtExit=%ARCHIVE%"
)
"%JAVA%" -XX:+UseSerialGC -XX:TieredStopAtLevel=1 "%SHARE%" -Xlog:cds*=off -Dfile.encoding=UTF-8 --module-path "%TARGET%\javafx" --add-modules javafx.controls,javafx.swing -cp "%CLASSES%" blindlap.Main %*
exit /b %ERRORLEVEL%

:archive
echo Preparing quicker starts, this once. 1>&2
set "WORK=%TARGET%\archive.%RANDOM%"
mkdir "%WORK%" >nul 2>&1 || exit /b 0
"%JAVA%" -XX:+UseSerialGC "-XX:ArchiveClassesAtExit=%WORK%\command.jsa" -Xlog:cds*=off -Dfile.encoding=UTF-8 -cp "%CLASSES%" blindlap.Main demo --no-window --notebook "%WORK%\day.blindlap" >nul 2>&1
if exist "%WORK%\command.jsa" move /y "%WORK%\command.jsa" "%ARCHIVE%" >nul 2>&1
rmdir /s /q "%WORK%" >nul 2>&1
exit /b 0
