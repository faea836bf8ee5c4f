using System.Text;
using System.Text.Json.Nodes;
using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Tests;

/// <summary>Notebooks for tests.</summary>
internal static class NotebookText
{
    /// <summary>A notebook that uses everything the format has, and fields it does not have.</summary>
    public const string Rich = """
        {
         "cells": [
          {
           "attachments": {
            "belt.png": {
             "image/png": "iVBORw0KGgo="
            }
           },
           "cell_type": "markdown",
           "id": "intro",
           "metadata": {
            "x_own": {
             "depth": [
              1,
              2.50,
              1e-7
             ]
            }
           },
           "source": [
            "# Stall — 😀\n",
            "![](attachment:belt.png)"
           ]
          },
          {
           "cell_type": "raw",
           "id": "raw-1",
           "metadata": {
            "format": "text/restructuredtext"
           },
           "source": ".. note::",
           "x_unknown": null
          },
          {
           "cell_type": "code",
           "execution_count": 3,
           "id": "code_1",
           "metadata": {
            "tags": [
             "parameters"
            ]
           },
           "outputs": [
            {
             "name": "stdout",
             "output_type": "stream",
             "text": "one\ttab\u0001\n"
            },
            {
             "data": {
              "application/vnd.x+json": {
               "a": [],
               "b": {}
              },
              "text/plain": [
               "42"
              ]
             },
             "execution_count": 3,
             "metadata": {},
             "output_type": "execute_result"
            },
            {
             "data": {
              "image/svg+xml": "<svg/>"
             },
             "metadata": {
              "isolated": true
             },
             "output_type": "display_data",
             "transient": {}
            },
            {
             "ename": "E",
             "evalue": "v",
             "output_type": "error",
             "traceback": []
            }
           ],
           "source": []
          }
         ],
         "metadata": {
          "kernelspec": {
           "name": "other"
          }
         },
         "nbformat": 4,
         "nbformat_minor": 5,
         "x_top": 12345678901234567890.10
        }

        """;

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    public static Notebook Read(string text, NotebookLimits? limits = null) => NotebookReader.Read(Bytes(text), "n.ipynb", limits);

    /// <summary>A notebook of code cells; a cell that begins with <c>#tag word</c> carries that tag.</summary>
    public static string Of(params string[] cells)
    {
        var nodes = cells.Select((code, index) =>
        {
            var tags = new JsonArray();
            if (code.StartsWith("#tag ", StringComparison.Ordinal))
            {
                var end = code.IndexOf('\n');
                tags.Add(code[5..end]);
                code = code[(end + 1)..];
            }

            return (JsonNode)new JsonObject
            {
                ["cell_type"] = "code",
                ["id"] = $"c{index + 1}",
                ["metadata"] = new JsonObject { ["tags"] = tags },
                ["source"] = code,
                ["outputs"] = new JsonArray(),
                ["execution_count"] = null,
            };
        });
        return new JsonObject
        {
            ["nbformat"] = 4,
            ["nbformat_minor"] = 5,
            ["metadata"] = new JsonObject(),
            ["cells"] = new JsonArray([.. nodes]),
        }.ToJsonString();
    }
}
