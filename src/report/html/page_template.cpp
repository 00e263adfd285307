#include "report/html/page.h"

namespace report {
namespace {

constexpr std::string_view kHead = R"html(<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>{{title}}</title>
<style>
)html";

constexpr std::string_view kBody = R"html(</style>
</head>
<body>
<header>
<p class="kind">{{kind}}</p>
<h1>{{title}}</h1>
<p class="subtitle">{{subtitle}}</p>
</header>
<nav aria-label="Contents">
<ol>
{{#chapters}}
<li><a href="#{{id}}">{{title}}</a></li>
{{/chapters}}
</ol>
</nav>
<main>
{{#sections}}
<section class="depth-{{depth}}" id="{{id}}">
{{#is_chapter}}
<h2>{{title}}</h2>
{{/is_chapter}}
{{#is_item}}
<h3>{{title}}</h3>
{{/is_item}}
{{#is_part}}
<h4>{{title}}</h4>
{{/is_part}}
{{#blocks}}
{{#is_lead}}
<p class="lead">{{text}}</p>
{{/is_lead}}
{{#is_paragraph}}
<p>{{text}}</p>
{{/is_paragraph}}
{{#is_facts}}
<dl>
{{#facts}}
<div><dt>{{term}}</dt><dd>{{value}}</dd></div>
{{/facts}}
</dl>
{{/is_facts}}
{{#is_points}}
<ul>
{{#points}}
<li>{{point}}</li>
{{/points}}
</ul>
{{/is_points}}
{{#is_cautions}}
<ul class="cautions">
{{#points}}
<li>{{point}}</li>
{{/points}}
</ul>
{{/is_cautions}}
{{#is_table}}
<p class="caption" id="{{caption_id}}">{{caption}}</p>
<div class="wide" role="region" tabindex="0" aria-labelledby="{{caption_id}}">
<table aria-labelledby="{{caption_id}}">
<thead>
<tr>{{#columns}}<th scope="col"{{#number}} class="number"{{/number}}>{{column}}</th>{{/columns}}</tr>
</thead>
<tbody>
{{#rows}}
<tr><th scope="row"{{#number}} class="number"{{/number}}>{{#is_linked}}<a href="#{{link}}">{{name}}</a>{{/is_linked}}{{^is_linked}}{{name}}{{/is_linked}}</th>{{#cells}}<td{{#number}} class="number"{{/number}}>{{cell}}</td>{{/cells}}</tr>
{{/rows}}
</tbody>
</table>
</div>
{{/is_table}}
{{#is_figure}}
<figure>
{{{svg}}}
<figcaption>{{caption}}</figcaption>
</figure>
{{/is_figure}}
{{/blocks}}
</section>
{{/sections}}
</main>
<footer>
<p>Written by blindswap {{version}}. This page is complete in itself: it loads nothing and runs no script.</p>
</footer>
</body>
</html>
)html";

}  // namespace

std::string page_template() {
  std::string page(kHead);
  page += page_style();
  return page += kBody;
}

}  // namespace report
