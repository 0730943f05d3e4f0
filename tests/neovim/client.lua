-- Neovim (0.7 to 0.10) as a client over stdio: opens every file, waits until their diagnostics have come to rest, types a
-- mistake into one and takes it out again. Prints one JSON object of what it shows: of each file, with the mistake, after it.
--   nvim --headless --clean -S client.lua    with RIGSEAM_TEST: JSON { command, folder, files, mistake }
local given = vim.fn.json_decode(os.getenv('RIGSEAM_TEST'))
vim.cmd('filetype off')

local published = {}
local handle = vim.lsp.handlers['textDocument/publishDiagnostics']
local function on_publish(...)
  local result = select(2, ...)
  published[result.uri] = (published[result.uri] or 0) + 1
  return handle(...)
end

local complaints = {}
local client = vim.lsp.start_client({
  name = 'rigseam',
  cmd = given.command,
  root_dir = given.folder,
  workspace_folders = { { uri = vim.uri_from_fname(given.folder), name = 'rigs' } },
  handlers = { ['textDocument/publishDiagnostics'] = on_publish },
  on_error = function(code, why) table.insert(complaints, tostring(code) .. ': ' .. tostring(why)) end,
})

local function shown(buffer)
  local out = {}
  for _, found in ipairs(vim.diagnostic.get(buffer)) do
    local lsp = (found.user_data or {}).lsp or {}
    table.insert(out, {
      rule = found.code or lsp.code,
      severity = found.severity,
      from = { found.lnum, found.col },
      to = { found.end_lnum, found.end_col },
    })
  end
  return out
end

local function all_said(buffers, before)
  for uri, _ in pairs(buffers) do
    if (published[uri] or 0) <= (before[uri] or 0) then return false end
  end
  return true
end

-- Until something new has been said of each file, and no more of any for a while.
local function rest(buffers, before)
  vim.wait(20000, function() return all_said(buffers, before) end, 10)
  local last
  repeat
    last = vim.deepcopy(published)
    vim.wait(500, function() return not vim.deep_equal(published, last) end, 10)
  until vim.deep_equal(published, last)
end

local buffers = {}
for _, name in ipairs(given.files) do
  local path = given.folder .. '/' .. name
  vim.cmd('silent edit ' .. vim.fn.fnameescape(path))
  local buffer = vim.api.nvim_get_current_buf()
  vim.bo[buffer].filetype = 'rig'
  buffers[vim.uri_from_fname(path)] = buffer
  vim.lsp.buf_attach_client(buffer, client)
end
rest(buffers, {})
local results = {}
for _, name in ipairs(given.files) do
  local buffer = buffers[vim.uri_from_fname(given.folder .. '/' .. name)]
  table.insert(results, { file = name, open = shown(buffer) })
end

local mistaken = vim.uri_from_fname(given.folder .. '/' .. given.mistake.file)
local one = { [mistaken] = buffers[mistaken] }
vim.api.nvim_set_current_buf(buffers[mistaken])
local before = vim.deepcopy(published)
vim.api.nvim_buf_set_lines(0, given.mistake.line, given.mistake.line, false, { given.mistake.text })
rest(one, before)
local typed = shown(buffers[mistaken])
before = vim.deepcopy(published)
vim.cmd('silent undo')
rest(one, before)
local undone = shown(buffers[mistaken])

vim.lsp.stop_client(client)
vim.wait(3000, function() return vim.lsp.client_is_stopped(client) end, 20)
io.stdout:write(vim.fn.json_encode({ results = results, typed = typed, undone = undone, complaints = complaints }) .. '\n')
vim.cmd('qall!')
